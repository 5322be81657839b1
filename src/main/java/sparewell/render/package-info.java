/**
 * Result sheets as a spreadsheet package and as CSV.
 *
 * <p>Knows tables and blocks, no word of tackle. May import table, units, finding and Commons CSV.
 * The package's XML is written directly: building it through an object model took about a second
 * more, and the parts are carried over into the owner's workbook one by one anyway.
 *
 * @see "ECMA-376 part 1 (SpreadsheetML, DrawingML), part 2 (package)"
 */
package sparewell.render;
