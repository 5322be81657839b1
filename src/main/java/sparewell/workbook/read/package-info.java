/** Reads the input sheets into a season and lists every fault. */
package sparewell.workbook.read;
