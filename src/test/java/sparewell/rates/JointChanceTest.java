package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;
import sparewell.rates.fit.Dice;
import sparewell.rates.fit.RateFit;
import sparewell.rates.history.SeasonHistory;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;

/** The chance that nothing runs out against seasons played out piece by piece. */
class JointChanceTest {
  private static final int TIMES = 30_000;
  private static final ItemId RED = new ItemId("Shad", "", "red");
  private static final ItemId BLUE = new ItemId("Shad", "", "blue");
  private static final ItemId GREEN = new ItemId("Shad", "", "green");
  private static final ItemId BROWN = new ItemId("Toad", "", "brown");
  private static final ItemId BLACK = new ItemId("Frog", "", "black");

  private static Season season() {
    SeasonMaker book =
        new SeasonMaker()
            .style("Shad", "Soft", "red", "blue", "green")
            .style("Toad", "Soft", "brown")
            .style("Frog", "Top", "black");
    Random random = new Random(4);
    for (int t = 0; t < 8; t++) {
      String id = "T" + t;
      book.trip(id, 10 * t, 8, t % 2 == 0 ? "wood" : "grass");
      book.thrown(id, "Shad", 2).thrown(id, "Toad", 4).thrown(id, "Frog", 1);
      if (random.nextInt(3) > 0) {
        book.lost(id, "Shad", random.nextInt(3) > 0 ? "red" : "blue", 1 + t % 2 * 2);
      }
      if (t % 3 == 0) {
        book.lost(id, "Toad", "brown", 2);
      }
    }
    return book.season();
  }

  private static Exposure hours(double hours, double days, String cover, ItemId... among) {
    return new Exposure(hours, days, Optional.of(cover), List.of(among));
  }

  /** Plays the exposures out under the fitted model; all losses of a style fall on its items. */
  private static final class Play {
    private final SeasonHistory history;
    private final RateFit fit;
    private final Dice dice;
    private final ItemShares shares;

    Play(Season season) {
      history = SeasonHistory.of(season);
      fit = RateFit.of(history.input(season.settings().asOf(), season.settings().halfLifeMonths()));
      dice = new Dice(fit);
      shares = ItemShares.of(season);
    }

    /** Share of seasons in which every stock lasts. */
    double lasting(List<LossForecast.StagedStock> stocks) {
      int lasted = 0;
      for (int i = 0; i < TIMES; i++) {
        dice.again();
        boolean all = true;
        for (LossForecast.StagedStock stock : stocks) {
          all &= lasts(stock);
        }
        lasted += all ? 1 : 0;
      }
      return (double) lasted / TIMES;
    }

    private RateFit.Term term(Exposure exposure) {
      int cover = history.covers().indexOf(exposure.cover().orElseThrow());
      return new RateFit.Term(exposure.hours(), exposure.days(), cover);
    }

    private boolean lasts(LossForecast.StagedStock stock) {
      LossForecast.Stage only = stock.stages().get(0);
      int lost =
          dice.lost(
              history.styles().indexOf(stock.style()),
              only.exposures().stream().map(this::term).toList());
      List<ItemId> items = only.exposures().get(0).among();
      double[] share = new double[items.size()];
      double sum = 0;
      for (int i = 0; i < share.length; i++) {
        share[i] = dice.gamma(shares.weight(items.get(i)));
        sum += share[i];
      }
      for (int i = 0; i < share.length; i++) {
        share[i] /= sum;
      }
      int[] of = new int[share.length];
      for (int n = 0; n < lost; n++) {
        of[dice.pick(share)]++;
      }
      for (int i = 0; i < of.length; i++) {
        Integer limit = only.pieces().get(items.get(i));
        if (limit != null && of[i] > limit) {
          return false;
        }
      }
      return true;
    }
  }

  private static void agrees(List<LossForecast.StagedStock> stocks) {
    Season season = season();
    double played = new Play(season).lasting(stocks);
    double error = Math.sqrt(played * (1 - played) / TIMES);
    assertTrue(played > 0.05 && played < 0.95, "tells little: " + played);
    assertEquals(played, LossModel.fit(season).nothingRunsOut(stocks), 3.5 * error);
  }

  private static LossForecast.StagedStock shad() {
    return LossForecast.StagedStock.of(
        "Shad",
        List.of(hours(6, 1, "wood", RED, BLUE, GREEN), hours(9, 2, "grass", RED, BLUE, GREEN)),
        Map.of(RED, 3, BLUE, 2, GREEN, 1));
  }

  /**
   * Shares of so many past losses were products beyond the largest double, and their ratio none.
   */
  @Test
  void lossesOfTenThousandsOnEveryTrip() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red", "blue");
    for (int t = 0; t < 6; t++) {
      book.trip("T" + t, 10 * t, 8, "wood").thrown("T" + t, "Shad", 2);
      book.lost("T" + t, "Shad", t % 2 == 0 ? "red" : "blue", 10_000);
    }
    LossModel model = LossModel.fit(book.season());
    List<Exposure> use = List.of(hours(6, 1, "wood", RED, BLUE));
    CountDistribution red = model.itemLosses("Shad", use).get(RED);
    double before = 0;
    for (int stock : new int[] {12, 3_000, 20_000, 60_000, 10_000_000}) {
      double lasts =
          model.nothingRunsOut(
              List.of(LossForecast.StagedStock.of("Shad", use, Map.of(RED, stock))));
      assertEquals(red.atMost(stock), lasts, 0.03, "stock " + stock);
      assertTrue(lasts >= before - 1e-9);
      before = lasts;
    }
    assertTrue(before > 0.999);
  }

  @Test
  void severalItemsOfOneStyle() {
    agrees(List.of(shad()));
  }

  @Test
  void severalStylesOfOneFamilyAndAnother() {
    agrees(
        List.of(
            shad(),
            LossForecast.StagedStock.of(
                "Toad", List.of(hours(14, 2, "wood", BROWN)), Map.of(BROWN, 2)),
            LossForecast.StagedStock.of(
                "Frog", List.of(hours(5, 1, "grass", BLACK)), Map.of(BLACK, 1))));
  }

  @Test
  void sharesOfSeveralGroupsAgreeWithOneGroup() {
    Season season = season();
    RateFit fit = new Play(season).fit;
    List<RateFit.Term> first = List.of(new RateFit.Term(6, 1, 0));
    List<RateFit.Term> second = List.of(new RateFit.Term(9, 2, 1));
    List<RateFit.Term> both = new ArrayList<>(first);
    both.addAll(second);
    for (double own : new double[] {0.3, 2, 9}) {
      CountDistribution exact = fit.losses(0, both).thinned(own, 4);
      CountDistribution points = fit.shared(0, List.of(first, second), own, List.of(4.0, 4.0));
      for (int n = 0; n < 8; n++) {
        assertEquals(exact.atMost(n), points.atMost(n), 1e-4, own + ", " + n);
      }
    }
  }
}
