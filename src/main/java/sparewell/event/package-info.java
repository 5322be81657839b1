/**
 * What goes into the box for a coming event, from where, and where it goes back to.
 *
 * <p>Last of the analyses. May import season, units, finding, numerics and the result records of
 * the analyses before it.
 */
package sparewell.event;
