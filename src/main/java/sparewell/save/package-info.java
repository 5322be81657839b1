/**
 * Puts our sheets, or rows of an import, into the angler's workbook without touching anything else.
 *
 * <p>Every entry of the angler's is copied packed as it is; only the parts that must list our
 * sheets are edited, as text, by addition or by removal of what an earlier run added. What stands
 * on our sheets is not known here.
 */
package sparewell.save;
