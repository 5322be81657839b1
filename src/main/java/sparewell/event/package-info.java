/** Packing for a coming event: what goes into its box, from where, and where it goes back to. */
package sparewell.event;
