/** Declarations of the input sheets, each column and setting once. */
package sparewell.workbook;
