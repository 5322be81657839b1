/**
 * From the cells of the input sheets to a season, with every fault found on the way.
 *
 * <p>One reader for each group of sheets. Whether the season as a whole makes sense is check's to
 * say; nothing is written.
 */
package sparewell.workbook.read;
