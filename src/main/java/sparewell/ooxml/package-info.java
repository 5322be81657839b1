/**
 * An .xlsx or .xlsm file as a container of parts: opened by content, bounded, checked, and refused
 * with a plain message where it is damaged, hostile or of another kind.
 *
 * <p>Knows no cell. May import finding, Commons Compress and the JDK's XML readers.
 */
package sparewell.ooxml;
