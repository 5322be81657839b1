/** The command line: the only place that prints, exits or asks the clock. */
package sparewell.cli;
