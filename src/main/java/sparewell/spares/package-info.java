/**
 * From loss forecasts to decisions: over what stretch to plan, what to carry, what to bring aboard,
 * what to buy first.
 *
 * <p>Reads a season, what is on hand and a loss forecast. May import season, units, finding,
 * numerics and the result records of stock and rates.
 */
package sparewell.spares;
