/**
 * Rules over a whole season: what is probably a slip, or worth knowing before trusting a result.
 *
 * <p>One class for each rule, listed in {@link sparewell.check.Checks}. A single cell's faults are
 * found where it is read; nothing is mended or left out here.
 */
package sparewell.check;
