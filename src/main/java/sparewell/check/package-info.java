/**
 * Rules over a whole season: probable slips, and facts to know before trusting a result.
 *
 * <p>One method for each rule, listed in {@link sparewell.check.Checks}. Faults of single cells are
 * found on reading; nothing is corrected or left out here.
 */
package sparewell.check;
