/**
 * The command line: one thin class for each command; parses, delegates to run, prints, gives the
 * exit code.
 *
 * <p>May import run and picocli, nothing else of the project.
 */
package sparewell.cli;
