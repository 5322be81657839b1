package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sparewell.rates.fit.RateFit;
import sparewell.season.ItemId;

/** Stretches of use put together by the items that their losses fall on. */
class DemandTest {
  private static final RateFit.Term FIRST = new RateFit.Term(6, 1, 0);
  private static final RateFit.Term SECOND = new RateFit.Term(9, 2, 1);

  private static Set<ItemId> items(String colours) {
    Set<ItemId> items = new LinkedHashSet<>();
    colours.chars().forEach(c -> items.add(new ItemId("Shad", "", String.valueOf((char) c))));
    return items;
  }

  @Test
  void demandsWithAnItemInCommonAreOne() {
    RateFit.Term third = new RateFit.Term(1, 1, 0);
    RateFit.Term fourth = new RateFit.Term(2, 1, 0);
    List<Demand> apart =
        Demand.disjoint(
            List.of(
                new Demand(items("ab"), List.of(FIRST)),
                new Demand(items("cd"), List.of(SECOND)),
                new Demand(items("e"), List.of(third)),
                new Demand(items("bc"), List.of(fourth))));
    // The last one joins the first two.
    assertEquals(2, apart.size());
    assertEquals(new Demand(items("e"), List.of(third)), apart.get(0));
    assertEquals(items("abcd"), apart.get(1).among());
    assertEquals(Set.of(FIRST, SECOND, fourth), Set.copyOf(apart.get(1).terms()));
    assertEquals(3, apart.get(1).terms().size());
    assertEquals(List.of(), Demand.disjoint(List.of()));
  }
}
