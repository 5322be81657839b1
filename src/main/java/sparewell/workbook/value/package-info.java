/**
 * Reads single cells: numbers with units and fractions, dates, words, names.
 *
 * <p>Knows neither columns nor sheets. Faults and assumptions go to the caller as remarks.
 */
package sparewell.workbook.value;
