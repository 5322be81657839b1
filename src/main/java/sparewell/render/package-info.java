/**
 * Result sheets as a spreadsheet package and as CSV.
 *
 * <p>Knows tables and blocks, no word of tackle and no workbook of the angler's. The package's XML
 * is written directly: building it through an object model took about a second more, and the parts
 * are carried over into the owner's workbook one by one anyway.
 *
 * @see "ECMA-376 part 1 (SpreadsheetML, DrawingML), part 2 (package)"
 */
package sparewell.render;
