/**
 * Output sheets: one file for each, columns declared there once, {@link
 * sparewell.sheet.ReportSheets} lists them all.
 *
 * <p>Turns the records of the analyses into tables and sentences; works nothing out. No file, no
 * CSV, no part of a workbook is known here: that is render's.
 */
package sparewell.sheet;
