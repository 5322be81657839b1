/**
 * The cells of a workbook as they stand in the file, streamed row by row, before any meaning.
 *
 * <p>May import finding and ooxml; the object model of POI only to compute formulas whose value the
 * file lacks.
 */
package sparewell.workbook.grid;
