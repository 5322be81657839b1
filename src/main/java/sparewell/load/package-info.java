/**
 * The load sheet: weight, moments and centres by compartment and of the whole boat, the margins to
 * the capacity plate, and what a plan does to trim and list.
 *
 * <p>Reads a season, what is on hand and the stow plan's records. May import season, units, finding
 * and the result records of stock and stow.
 */
package sparewell.load;
