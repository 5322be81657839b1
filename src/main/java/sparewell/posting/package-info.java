/**
 * Ticks, counts and the trip card of our sheets, turned into rows of his own sheets.
 *
 * <p>Nothing is read or written here: typed entries in, rows or faults out.
 */
package sparewell.posting;
