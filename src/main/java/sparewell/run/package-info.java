/**
 * The one place that wires read, check, analyse, render and save, for one workbook or many.
 *
 * <p>May import everything but the command line.
 */
package sparewell.run;
