/**
 * The command line: one thin class for each command; parses, delegates to run, prints, gives the
 * exit code.
 *
 * <p>The only place that prints, exits or asks the clock. No work on a workbook is done here.
 */
package sparewell.cli;
