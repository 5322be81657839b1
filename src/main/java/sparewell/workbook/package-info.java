/**
 * The angler's sheets: declared once in {@link sparewell.workbook.InputSheets}, read from there
 * into a season with all findings, and written from there as templates.
 *
 * <p>May import season, units, finding and ooxml, and the libraries that read and write cells; no
 * analysis.
 */
package sparewell.workbook;
