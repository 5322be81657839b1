/**
 * Blank and demo workbooks, generated from {@link sparewell.workbook.InputSheets}.
 *
 * <p>The only place that writes cells through POI. No column is declared here.
 */
package sparewell.workbook.template;
