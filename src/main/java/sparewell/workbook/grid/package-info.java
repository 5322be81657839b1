/** Cells of a workbook as stored in the file, streamed row by row; knows no input sheet. */
package sparewell.workbook.grid;
