/**
 * What a single cell means: numbers with units and fractions, dates, words, names.
 *
 * <p>Knows no column and no sheet. What is wrong with a cell, or was assumed, is remarked to the
 * caller, who knows where the cell stands.
 */
package sparewell.workbook.value;
