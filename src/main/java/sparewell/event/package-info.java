/**
 * Packing for a coming event: what goes into its box, from where, and where it goes back to.
 *
 * <p>Last of the analyses: reads the records of stock and spares. No count to carry is worked out
 * here, and nothing is known of sheets.
 */
package sparewell.event;
