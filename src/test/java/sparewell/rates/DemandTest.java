package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sparewell.rates.fit.RateFit;
import sparewell.season.ItemId;

/** Stretches of use by the items that their losses fall on. */
class DemandTest {
  private static final RateFit.Term FIRST = new RateFit.Term(6, 1, 0);
  private static final RateFit.Term SECOND = new RateFit.Term(9, 2, 1);

  private static Set<ItemId> items(String colours) {
    Set<ItemId> items = new LinkedHashSet<>();
    colours.chars().forEach(c -> items.add(new ItemId("Shad", "", String.valueOf((char) c))));
    return items;
  }

  @Test
  void demandsOverlapWhereTheyHaveAnItemInCommon() {
    Demand ab = new Demand(items("ab"), List.of(FIRST));
    Demand c = new Demand(items("c"), List.of(SECOND));
    Demand bc = new Demand(items("bc"), List.of(SECOND));
    assertFalse(Demand.overlap(List.of()));
    assertFalse(Demand.overlap(List.of(ab, c)));
    assertTrue(Demand.overlap(List.of(ab, c, bc)));
  }
}
