/**
 * Takes rows for the angler's input sheets from CSV files: understands the file, leaves out what
 * the sheet holds already, and tries the rest as the analyser would read it. Writes nothing.
 *
 * <p>The rows it plans are put into the workbook by save.
 */
package sparewell.workbook.importing;
