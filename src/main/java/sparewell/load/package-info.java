/** The load sheet; no capacity is ever computed, and without a plate none is checked. */
package sparewell.load;
