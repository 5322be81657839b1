/**
 * What the angler ticked, counted and logged on our sheets, as rows of his own sheets.
 *
 * <p>Nothing is read or written here: typed entries in, rows or faults out.
 */
package sparewell.posting;
