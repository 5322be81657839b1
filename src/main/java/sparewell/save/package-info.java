/**
 * Puts our sheets, or imported rows, into the angler's workbook without changing anything else.
 *
 * <p>The angler's entries are copied packed. Only the parts that must list our sheets are edited,
 * as text, by adding our entries or removing those of an earlier run. Does not know what the sheets
 * hold.
 */
package sparewell.save;
