/**
 * Reads the input sheets into a season and lists every fault.
 *
 * <p>One reader for each group of sheets. Rules over the whole season are in check; nothing is
 * written.
 */
package sparewell.workbook.read;
