package sparewell.rates;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sparewell.rates.fit.RateFit;
import sparewell.season.ItemId;

/**
 * Stretches of use of a style whose losses fall on the same items.
 *
 * @param among the items
 * @param terms the stretches
 */
record Demand(Set<ItemId> among, List<RateFit.Term> terms) {
  /** True if two of the demands have some items in common. */
  static boolean overlap(List<Demand> demands) {
    Set<ItemId> seen = new HashSet<>();
    return demands.stream().flatMap(one -> one.among().stream()).anyMatch(item -> !seen.add(item));
  }
}
