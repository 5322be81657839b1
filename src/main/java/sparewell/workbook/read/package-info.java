/**
 * From the cells of the input sheets to a season, with every fault found on the way.
 *
 * <p>May import season, units, finding, ooxml, the declaration of the input sheets and the readers
 * of cells.
 */
package sparewell.workbook.read;
