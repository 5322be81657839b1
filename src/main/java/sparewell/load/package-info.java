/**
 * The load sheet: weight, moments and centres by compartment and of the whole boat, the margins to
 * the capacity plate, and what a plan does to trim and list.
 *
 * <p>Reads a season, what is on hand, the stow plan and the idle styles. No box is placed here
 * (that is stow's), and no capacity is ever computed: without a plate nothing is checked against
 * one.
 */
package sparewell.load;
