package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import sparewell.rates.fit.RateFutures;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;
import sparewell.spares.SeasonPlan;
import sparewell.spares.SeasonPlanner;
import sparewell.stock.OnHandCalculator;

/**
 * The season plan against 100,000 seasons played piece by piece from a fitted model: uncertain
 * hyperparameters, style rates that lean on their family and walk on from trip to trip, days that
 * vary, and items that share what their style loses.
 */
class SeasonForecastTest {
  private static final int SEASONS = 100_000;
  private static final double[] HOURS = {14, 20, 9, 26};
  private static final int HELD = 5; // of each item, as the log book has it
  private static final int[] DAYS = {5, 26, 54, 96};
  private static final String[] STYLES = {"Shad", "Toad"};
  private static final String[][] COLOURS = {{"red", "blue", "bone"}, {"brown"}};

  /**
   * 24 trips of a year in which the losses of one style rise and fall: 26 more are foreseen a year.
   */
  private static SeasonMaker log() {
    SeasonMaker log =
        new SeasonMaker().style("Shad", "Soft", COLOURS[0]).style("Toad", "Soft", COLOURS[1]);
    for (int t = 0; t < 24; t++) {
      String id = "T" + t;
      log.trip(id, 130 + 15 * t, 8, "").thrown(id, "Shad", 3).thrown(id, "Toad", 2);
      int shad = t < 8 ? 0 : t < 14 ? 2 + t % 2 : t < 18 ? 0 : 3 + t % 3;
      for (int n = 0; n < shad; n++) {
        log.lost(id, "Shad", COLOURS[0][(t + n) % 4 == 0 ? 1 : 0], 1);
      }
      if (t % 6 == 0) {
        log.lost(id, "Toad", "brown", 1);
      }
    }
    for (int k = 0; k < HOURS.length; k++) {
      LocalDate day = SeasonMaker.AS_OF.plusDays(DAYS[k]);
      log.event("E" + k, day, HOURS[k], 1);
    }
    return log;
  }

  /** Sums of a figure and of its square over the seasons, for its mean and standard error. */
  private static final class Figure {
    private double sum;
    private double squares;

    void add(double one) {
      sum += one;
      squares += one * one;
    }

    double mean() {
      return sum / SEASONS;
    }

    double error() {
      return Math.sqrt(Math.max(0, squares / SEASONS - mean() * mean()) / SEASONS);
    }

    static Figure[] each() {
      Figure[] figures = new Figure[HOURS.length];
      Arrays.setAll(figures, k -> new Figure());
      return figures;
    }
  }

  private final Figure[] missed = Figure.each();
  private final Figure[] lost = Figure.each();
  private final Figure[] lasted = Figure.each();

  @Test
  void shortageAndChancesAreThoseOfSeasonsPlayedFromTheFit() {
    Season season = log().season();
    LossModel model = LossModel.fit(season);
    SeasonPlan plan = SeasonPlanner.plan(season, OnHandCalculator.of(season), model, List.of());
    ItemShares shares = ItemShares.of(season);
    double[][] weights = new double[STYLES.length][];
    for (int s = 0; s < STYLES.length; s++) {
      String style = STYLES[s];
      weights[s] =
          Arrays.stream(COLOURS[s])
              .mapToDouble(colour -> shares.weight(new ItemId(style, "", colour)))
              .toArray();
    }
    play(model, weights);
    for (int k = 0; k < HOURS.length; k++) {
      SeasonPlan.Stage stage = plan.stages().get(k);
      String event = stage.event().name();
      assertEquals(lost[k].mean(), stage.expectedLossPieces(), 4 * lost[k].error(), event);
      assertEquals(missed[k].mean(), stage.missedPieces(), 4 * missed[k].error(), event);
      // All rest on 640 futures, the first scaled by what is known of each item.
      double own = k == 0 ? 0 : 0.005;
      assertEquals(
          lasted[k].mean(),
          stage.unboughtProbability().getAsDouble(),
          3 * Math.hypot(own, lasted[k].error()),
          event);
    }
    assertTrue(missed[3].mean() > 1 && lasted[3].mean() < 0.6 && lasted[0].mean() > 0.6);
    double walked = tail(model, steps()[3]) / tail(model, 1);
    assertTrue(walked > 1.1, () -> "rates hardly walk: " + walked);
  }

  private static double tail(LossModel model, int ahead) {
    List<ItemId> all = List.of(new ItemId("Shad", "", "red"));
    var losses =
        model.styleLosses("Shad", List.of(new Exposure(20, 1, Optional.empty(), all, ahead)));
    return losses.above((int) (7 * losses.mean()));
  }

  /** 24 trips were logged in the year before: one every 15.2 days from the first event on. */
  private static int[] steps() {
    int[] steps = new int[HOURS.length];
    for (int k = 0; k < HOURS.length; k++) {
      steps[k] = 1 + Math.max(k, (int) Math.round(24 * (DAYS[k] - DAYS[0]) / 365.25));
    }
    return steps;
  }

  private void play(LossModel model, double[][] weights) {
    RateFutures futures = model.futures(SEASONS);
    RandomGenerator random = new Well19937c(42);
    double[][][] walks =
        IntStream.range(0, STYLES.length)
            .mapToObj(s -> futures.rates(s, steps()))
            .toArray(double[][][]::new);
    for (int i = 0; i < SEASONS; i++) {
      boolean all = true;
      int[] without = new int[HOURS.length];
      int[] gone = new int[HOURS.length];
      double[][] chances = new double[HOURS.length][STYLES.length];
      for (int s = 0; s < STYLES.length; s++) {
        double[] rates = walks[s][i];
        for (int k = 0; k < HOURS.length; k++) {
          chances[k][s] = rates[k] * HOURS[k] * model.meanShare(STYLES[s]);
        }
      }
      int[][] left = new int[STYLES.length][];
      double[][] parts = new double[STYLES.length][];
      for (int s = 0; s < STYLES.length; s++) {
        left[s] = new int[weights[s].length];
        Arrays.fill(left[s], HELD);
        parts[s] = dirichlet(weights[s], random);
      }
      for (int k = 0; k < HOURS.length; k++) {
        for (int s = 0; s < STYLES.length; s++) {
          double size = futures.size(i);
          double mean =
              chances[k][s] * new GammaDistribution(random, size, 1 / size, 1e-9).sample();
          int pieces =
              mean < 1e-12 ? 0 : new PoissonDistribution(random, mean, 1e-9, 9_999).sample();
          gone[k] += pieces;
          for (int n = 0; n < pieces; n++) {
            int item = pick(parts[s], random.nextDouble());
            without[k] += --left[s][item] < 0 ? 1 : 0;
          }
        }
        all &= without[k] == 0;
        missed[k].add(without[k]);
        lost[k].add(gone[k]);
        lasted[k].add(all ? 1 : 0);
      }
    }
  }

  private static double[] dirichlet(double[] weights, RandomGenerator random) {
    double[] parts = new double[weights.length];
    for (int i = 0; i < parts.length; i++) {
      parts[i] = new GammaDistribution(random, weights[i], 1, 1e-9).sample();
    }
    double sum = Arrays.stream(parts).sum();
    return Arrays.stream(parts).map(one -> one / sum).toArray();
  }

  private static int pick(double[] parts, double at) {
    int item = 0;
    double passed = parts[0];
    while (passed < at && item < parts.length - 1) {
      passed += parts[++item];
    }
    return item;
  }
}
