/**
 * Cells of a workbook as stored in the file, streamed row by row.
 *
 * <p>Knows no input sheet. POI is used only to evaluate formulas without a stored value.
 */
package sparewell.workbook.grid;
