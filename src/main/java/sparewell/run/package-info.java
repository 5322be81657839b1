/**
 * The one place that wires read, check, analyse, render and save, for one workbook or many.
 *
 * <p>Nothing is calculated, read or drawn here, and nothing printed: outcomes go back as lines.
 */
package sparewell.run;
