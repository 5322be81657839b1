package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;

/** Shares of the items of a style in its losses. */
class ItemSharesTest {
  private static ItemId item(String style, String size, String colour) {
    return new ItemId(style, size, colour);
  }

  /**
   * ln of the Dirichlet-multinomial chance by gamma functions, without the multinomial's factor.
   */
  private static double byGammas(int[] counts, double alpha) {
    double sum = 0;
    int all = 0;
    for (int count : counts) {
      all += count;
      sum += Gamma.logGamma(alpha / counts.length + count) - Gamma.logGamma(alpha / counts.length);
    }
    return sum + Gamma.logGamma(alpha) - Gamma.logGamma(alpha + all);
  }

  private static double beyondOne(List<int[]> logs, double alpha) {
    return ItemShares.logLikelihood(logs, alpha) - ItemShares.logLikelihood(logs, 1);
  }

  @Test
  void theLikelihoodIsTheDirichletMultinomials() {
    int[][] logs = {{0}, {7}, {3, 0, 0}, {1, 2, 3, 4}, {400, 900}, {0, 0}};
    for (double alpha : new double[] {0.02, 1, 4, 300}) {
      double all = 0;
      for (int[] counts : logs) {
        double exact = byGammas(counts, alpha) - byGammas(counts, 1);
        assertEquals(exact, beyondOne(List.of(counts), alpha), 1e-8);
        all += exact;
      }
      assertEquals(all, beyondOne(List.of(logs), alpha), 1e-8);
    }
  }

  @Test
  void withoutLossesAlphaIsItsPrior() {
    assertEquals(4, ItemShares.alpha(List.of()), 1e-9);
    assertEquals(4, ItemShares.alpha(List.of(new int[] {12})), 1e-9, "one item tells nothing");
  }

  /** scipy 1.10.1: quad of the likelihood times the prior N(ln 4, 1) of ln alpha, and times it. */
  @Test
  void alphaFollowsHowUnequalTheSharesAre() {
    assertEquals(1.194874, ItemShares.alpha(List.of(new int[] {20, 0, 0, 1})), 1e-3);
    assertEquals(10.58226, ItemShares.alpha(List.of(new int[] {5, 6, 5}, new int[] {9, 8})), 0.01);
  }

  private static SeasonMaker book() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red", "blue").style("Toad", "Soft");
    for (String colour : List.of("red", "green")) {
      book.stocked(item("Shad", "4 in", colour));
    }
    return book;
  }

  @Test
  void anItemHasItsPartOfAlphaAndItsLosses() {
    SeasonMaker book = book().lost("t", "Shad", "red", 3).lost("u", "Shad", "red", 2);
    ItemShares shares = ItemShares.of(book.season());
    assertEquals(ItemShares.alpha(List.of(new int[] {5, 0, 0, 0})), shares.alpha(), 1e-12);
    double part = shares.alpha() / 4;
    ItemId red = item("Shad", "", "red");
    ItemId blue = item("Shad", "", "blue");
    ItemId big = item("Shad", "4 in", "green");
    assertEquals(part + 5, shares.weight(red), 1e-12);
    assertEquals(part, shares.weight(blue), 1e-12);
    assertEquals(part, shares.weight(item("Shad", "9 in", "red")), 1e-12, "of no stock row");
    assertEquals(shares.alpha(), shares.weight(item("Toad", "", "x")), 1e-12);
    assertEquals(part, shares.weight(big), 1e-12);
  }

  @Test
  void aLossOfKnownColourOnlyIsSharedAmongThatColour() {
    // Red of either size: 3 pieces known of one, none of the other; 6 more of unknown size.
    SeasonMaker book = book().lost("t", "Shad", "red", 3);
    book.lost("u", item("Shad", "", "yellow"), 2, false);
    Map<ItemId, Double> before = ItemShares.of(book.season()).weights().get("Shad");
    book.lost("u", item("Shad", "4 in", ""), 6, false);
    Map<ItemId, Double> after = ItemShares.of(book.season()).weights().get("Shad");
    ItemId red = item("Shad", "4 in", "red");
    ItemId green = item("Shad", "4 in", "green");
    assertEquals(before.get(red) + 3, after.get(red), 1e-12);
    assertEquals(before.get(green) + 3, after.get(green), 1e-12);
    for (String colour : List.of("red", "blue")) {
      ItemId other = item("Shad", "", colour);
      assertEquals(before.get(other), after.get(other), "not of that size");
    }
    // Nothing is known of it but the style: the shares stay as they are.
    book.lost("v", item("Shad", "", ""), 9, false);
    assertEquals(after, ItemShares.of(book.season()).weights().get("Shad"));
  }

  @Test
  void aLossOfKnownColourAndUnknownSizeIsSharedAmongThatColour() {
    SeasonMaker book = new SeasonMaker().style("Frog", "Top");
    ItemId small = item("Frog", "S", "red");
    ItemId large = item("Frog", "L", "red");
    ItemId green = item("Frog", "L", "green");
    book.stocked(small).stocked(large).stocked(green);
    Map<ItemId, Double> before = ItemShares.of(book.season()).weights().get("Frog");
    book.lost("t", item("Frog", "", "red"), 4, false);
    Map<ItemId, Double> after = ItemShares.of(book.season()).weights().get("Frog");
    assertEquals(before.get(small) + 2, after.get(small), 1e-12);
    assertEquals(before.get(large) + 2, after.get(large), 1e-12);
    assertEquals(before.get(green), after.get(green));
  }
}
