/**
 * The one place that wires read, check, analyse, render and save, for one workbook or many.
 *
 * <p>No arithmetic, no rule and no column is here; nothing is printed: outcomes go back as lines.
 */
package sparewell.run;
