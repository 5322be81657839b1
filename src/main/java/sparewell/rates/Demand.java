package sparewell.rates;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
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
  /** Merges demands that have an item in common, until none have. */
  static List<Demand> disjoint(List<Demand> demands) {
    List<Demand> out = new ArrayList<>();
    for (Demand next : demands) {
      Set<ItemId> among = new LinkedHashSet<>(next.among());
      List<RateFit.Term> terms = new ArrayList<>(next.terms());
      boolean merged = true;
      while (merged) {
        merged = false;
        for (Demand other : List.copyOf(out)) {
          if (!Collections.disjoint(other.among(), among)) {
            out.remove(other);
            among.addAll(other.among());
            terms.addAll(other.terms());
            merged = true;
          }
        }
      }
      out.add(new Demand(among, terms));
    }
    return out;
  }
}
