/**
 * An .xlsx or .xlsm file as a container of parts: opened by content, bounded, checked, and refused
 * with a plain message where it is damaged, hostile or of another kind.
 *
 * <p>Knows no cell and no sheet of ours. Nothing is unpacked to disk or fetched.
 */
package sparewell.ooxml;
