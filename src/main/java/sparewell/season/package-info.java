/**
 * A season as the angler recorded it: immutable, typed, references resolved, in the order of the
 * workbook.
 *
 * <p>Data only, with the arithmetic that defines a field. Knows no spreadsheet beyond the cell that
 * a record came from.
 */
package sparewell.season;
