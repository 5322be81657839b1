/**
 * Which box goes into which compartment, with what is proven about it and in how few moves.
 *
 * <p>Reads a season and what is on hand, gives records. May import season, units, finding and the
 * result records of stock.
 */
package sparewell.stow;
