/**
 * The cells of a workbook as they stand in the file, streamed row by row, before any meaning.
 *
 * <p>Knows no input sheet. POI's object model serves only to compute formulas whose value the file
 * lacks.
 */
package sparewell.workbook.grid;
