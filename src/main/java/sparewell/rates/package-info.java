/**
 * Loss rates per style and the distribution of coming losses, with their uncertainty.
 *
 * <p>Reads a season, gives records and distributions. May import season, units, finding, numerics
 * and stock.
 */
package sparewell.rates;
