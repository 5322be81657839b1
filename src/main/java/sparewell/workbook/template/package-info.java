/**
 * Blank and demo workbooks, generated from {@link sparewell.workbook.InputSheets}.
 *
 * <p>May import workbook, workbook.demo, units, and the libraries that write cells.
 */
package sparewell.workbook.template;
