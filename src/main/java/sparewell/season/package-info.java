/**
 * The records of a season: immutable, typed, references resolved.
 *
 * <p>Data only, with the arithmetic that defines a field. Knows no spreadsheet beyond the cell that
 * a record came from.
 */
package sparewell.season;
