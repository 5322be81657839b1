/**
 * The angler's sheets: declared once in {@link sparewell.workbook.InputSheets}, read from there
 * into a season with all findings, and written from there as templates.
 *
 * <p>This package holds the declaration alone; reading and writing lie in the packages below it. No
 * analysis.
 */
package sparewell.workbook;
