/**
 * A season as the angler recorded it: immutable, typed, references resolved, in the order of the
 * workbook.
 *
 * <p>Data only, with the arithmetic that defines a field. May import units and finding; knows no
 * spreadsheet.
 */
package sparewell.season;
