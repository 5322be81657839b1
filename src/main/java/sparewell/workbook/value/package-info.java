/** Reads single cells: numbers with units and fractions, dates, words, names. */
package sparewell.workbook.value;
