/**
 * Output sheets: one file for each, columns declared there once, {@link
 * sparewell.sheet.ReportSheets} lists them all.
 *
 * <p>Turns the records of the analyses into tables and sentences; computes nothing. May import
 * table, the result records of all analyses, season, finding and units.
 */
package sparewell.sheet;
