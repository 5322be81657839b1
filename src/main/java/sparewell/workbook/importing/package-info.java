/**
 * Plans rows for the input sheets from CSV files: parses the file, leaves out rows that the sheet
 * holds, and checks the others by reading them like the analysis does.
 *
 * <p>The rows are written by save; here only files of rejected rows are.
 */
package sparewell.workbook.importing;
