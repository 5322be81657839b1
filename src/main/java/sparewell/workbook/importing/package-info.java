/** Plans rows for the input sheets from CSV files, checked by reading them as the analysis does. */
package sparewell.workbook.importing;
