/**
 * Rules over a whole season: what is probably a slip, or worth knowing before trusting a result.
 *
 * <p>One class for each rule, listed in {@link sparewell.check.Checks}. May import season, finding
 * and units.
 */
package sparewell.check;
