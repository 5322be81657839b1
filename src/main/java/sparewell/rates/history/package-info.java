/** A season's trips turned into exposures: what each style was used for, and what was lost. */
package sparewell.rates.history;
