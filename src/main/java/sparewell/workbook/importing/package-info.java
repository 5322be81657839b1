/**
 * Takes rows for the angler's input sheets from CSV files: understands the file, leaves out what
 * the sheet holds already, and tries the rest as the analyser would read it. Writes nothing.
 *
 * <p>May import workbook.read, its cells and values, finding, units, ooxml and Commons CSV.
 */
package sparewell.workbook.importing;
