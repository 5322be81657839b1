package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.NegativeBinomial;

/** Properties that any right fit has. */
class RateFitTest {
  private static Observation trip(int style, double hours, int lost) {
    return new Observation(style, 0, hours, 1, Observation.MIX, lost, false, 1);
  }

  private static List<Observation> log(long seed, int styles, int trips, double rate) {
    Random random = new Random(seed);
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      int cover = random.nextInt(3);
      for (int s = 0; s < styles; s++) {
        if (random.nextBoolean()) {
          double hours = 0.5 + 4 * random.nextDouble();
          double mean = hours * rate * (1 + s % 3) * (1 + cover) / 4;
          int lost = 0;
          for (double p = random.nextDouble(); p > Math.exp(-mean); p *= random.nextDouble()) {
            lost++;
          }
          log.add(new Observation(s, t, hours, 1, cover, lost, false, 1));
        }
      }
    }
    return log;
  }

  private static List<Integer> families(int styles, int families) {
    List<Integer> of = new ArrayList<>();
    for (int s = 0; s < styles; s++) {
      of.add(s % families);
    }
    return of;
  }

  private static void assertSound(RateFit fit, String where) {
    for (int s = 0; s < fit.input().styles(); s++) {
      Estimate rate = fit.rate(s);
      assertTrue(rate.low90() > 0, where);
      assertTrue(rate.low90() < rate.high90(), where);
      assertTrue(Double.isFinite(rate.mean()) && rate.mean() > 0, where);
      assertTrue(fit.ownShare(s) >= 0 && fit.ownShare(s) <= 1, where);
      CountDistribution losses = fit.losses(s, List.of(new RateFit.Term(8, 1, Observation.MIX)));
      assertEquals(8 * rate.mean(), losses.mean(), 5e-3 * losses.mean(), where);
      // Long tails are cut at 1e-4.
      assertTrue(losses.above(losses.cut() - 1) < 1e-4, where);
    }
  }

  @Test
  void holdsForAnyLog() {
    assertSound(RateFit.of(new FitInput(List.of(0), 1, 0, List.of())), "empty log");
    assertSound(
        RateFit.of(new FitInput(List.of(0), 1, 0, List.of(trip(0, 3, 0)))), "one trip, no loss");
    assertSound(
        RateFit.of(new FitInput(List.of(0), 1, 0, List.of(trip(0, 3, 30)))),
        "one trip, 10 an hour");
    for (double rate : new double[] {0.001, 0.1, 10}) {
      FitInput input = new FitInput(families(9, 2), 2, 3, log(1, 9, 30, rate));
      RateFit fit = RateFit.of(input);
      assertTrue(fit.converged(), "rate " + rate);
      assertSound(fit, "rate " + rate);
      double mean = fit.rate(0).mean();
      assertTrue(mean < 40 * rate && mean > rate / 40, mean + " for " + rate);
    }
    assertSound(RateFit.of(new FitInput(families(9, 1), 1, 3, log(2, 9, 30, 0))), "no loss at all");
    assertSound(
        RateFit.of(new FitInput(families(300, 12), 12, 3, log(3, 300, 2, 0.1))), "300 styles");
    assertSound(RateFit.of(new FitInput(families(2, 2), 2, 3, log(4, 2, 1000, 0.1))), "1000 trips");
  }

  @Test
  void aFamilyOfOppositesHolds() {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < 40; t++) {
      log.add(trip(0, 5, 60));
      log.add(trip(1, 5, 0));
    }
    RateFit fit = RateFit.of(new FitInput(List.of(0, 0), 1, 0, log));
    assertSound(fit, "opposites");
    assertEquals(12, fit.rate(0).mean(), 2);
    assertTrue(fit.rate(1).mean() < 0.05);
  }

  @Test
  void ranOutMeansAtLeast() {
    List<Observation> exact = new ArrayList<>();
    List<Observation> atLeast = new ArrayList<>();
    for (int t = 0; t < 10; t++) {
      exact.add(trip(0, 4, 2));
      atLeast.add(new Observation(0, 0, 4, 1, Observation.MIX, 2, t < 5, 1));
    }
    double rate = RateFit.of(new FitInput(List.of(0), 1, 0, exact)).rate(0).mean();
    double higher = RateFit.of(new FitInput(List.of(0), 1, 0, atLeast)).rate(0).mean();
    assertTrue(higher > 1.05 * rate, rate + " and " + higher);
  }

  @Test
  void ranOutWithNothingLoggedTeachesNothing() {
    List<Observation> log = List.of(trip(0, 4, 1), trip(0, 5, 0));
    List<Observation> more = new ArrayList<>(log);
    more.add(new Observation(0, 0, 6, 1, Observation.MIX, 0, true, 1));
    double rate = RateFit.of(new FitInput(List.of(0), 1, 0, log)).rate(0).mean();
    double same = RateFit.of(new FitInput(List.of(0), 1, 0, more)).rate(0).mean();
    assertEquals(rate, same, 2e-3 * rate);
  }

  @Test
  void moreHoursWithoutALossLowerTheRate() {
    double before = Double.POSITIVE_INFINITY;
    for (double hours : new double[] {1, 3, 10, 40, 200}) {
      List<Observation> log = new ArrayList<>(log(5, 4, 12, 0.2));
      log.add(trip(0, hours, 0));
      double rate = RateFit.of(new FitInput(families(4, 2), 2, 3, log)).rate(0).mean();
      assertTrue(rate < before, hours + " h: " + rate + " after " + before);
      before = rate;
    }
  }

  @Test
  void aPooledRateLiesBetweenOwnAndFamily() {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < 12; t++) {
      for (int s = 0; s < 5; s++) {
        log.add(trip(s, 4, t % 3 == 0 ? 1 : 0)); // 1 in 12 hours
      }
      log.add(trip(5, 4, t % 2 == 0 ? 1 : 0)); // 1.5 in 12 hours
    }
    RateFit fit = RateFit.of(new FitInput(families(6, 1), 1, 0, log));
    double pooled = fit.rate(5).mean();
    assertTrue(pooled > 1 / 12.0 && pooled < 1.5 / 12, "pooled " + pooled);
    assertTrue(pooled > fit.rate(0).mean());
  }

  @Test
  void namesAndOrderDoNotMatter() {
    List<Observation> log = log(6, 6, 20, 0.2);
    RateFit fit = RateFit.of(new FitInput(List.of(0, 0, 0, 1, 1, 1), 2, 3, log));
    List<Observation> shuffled = new ArrayList<>();
    for (Observation o : log) {
      shuffled.add(
          new Observation(
              5 - o.style(),
              o.trip(),
              o.hours(),
              o.days(),
              o.cover(),
              o.lostPieces(),
              o.atLeast(),
              1));
    }
    Collections.shuffle(shuffled, new Random(1));
    RateFit other = RateFit.of(new FitInput(List.of(1, 1, 1, 0, 0, 0), 2, 3, shuffled));
    for (int s = 0; s < 6; s++) {
      double rate = fit.rate(s).mean();
      assertEquals(rate, other.rate(5 - s).mean(), 1e-6 * rate);
    }
  }

  @Test
  void aWiderChanceNeverLowersCarry() {
    RateFit fit = RateFit.of(new FitInput(families(5, 2), 2, 3, log(7, 5, 15, 0.3)));
    CountDistribution losses = fit.losses(2, List.of(new RateFit.Term(20, 2, 1)));
    int before = 0;
    for (double chance = 0.05; chance < 0.9999; chance += 0.01) {
      int carry = losses.quantile(chance);
      assertTrue(carry >= before);
      before = carry;
    }
  }

  @Test
  void aStyleWithoutHistoryTakesItsFamily() {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < 20; t++) {
      for (int s = 0; s < 4; s++) {
        log.add(trip(s, 3, 2));
        log.add(trip(s + 4, 3, 0));
      }
    }
    // Styles 8 and 9 are new, one in each family; 10 is alone in a new family.
    RateFit fit = RateFit.of(new FitInput(List.of(0, 0, 0, 0, 1, 1, 1, 1, 0, 1, 2), 3, 0, log));
    assertEquals(0, fit.ownShare(8));
    assertTrue(fit.rate(8).mean() > 0.4 && fit.rate(9).mean() < 0.15);
    assertTrue(fit.rate(10).mean() > fit.rate(9).mean());
    assertTrue(fit.rate(10).low90() < fit.rate(8).low90());
    assertTrue(fit.rate(10).high90() > fit.rate(9).high90());
    assertTrue(fit.ownShare(0) > 0.5);
  }

  @Test
  void coverAveragesToTheMixAndAnUnknownOneChangesNothingOnAverage() {
    List<Observation> log = log(8, 6, 40, 0.3);
    FitInput input = new FitInput(families(6, 2), 2, 3, log);
    RateFit fit = RateFit.of(input);
    double average = 0;
    double[] mix = input.mix();
    for (int c = 0; c < 3; c++) {
      average += mix[c] * fit.multiplier(c).mean();
    }
    assertEquals(1, average, 1e-6);
    assertTrue(fit.multiplier(0).mean() < fit.multiplier(1).mean());
    assertTrue(fit.multiplier(1).mean() < fit.multiplier(2).mean());
    assertEquals(1, fit.multiplier(Observation.NEVER_LOGGED).mean(), 1e-6);
  }

  @Test
  void oldTripsFadeWithTheirWeight() {
    List<Observation> log = new ArrayList<>();
    List<Observation> faded = new ArrayList<>();
    for (int t = 0; t < 20; t++) {
      log.add(trip(0, 4, t < 10 ? 3 : 0));
      faded.add(
          new Observation(0, t, 4, 1, Observation.MIX, t < 10 ? 3 : 0, false, t < 10 ? 0.1 : 1));
    }
    double all = RateFit.of(new FitInput(List.of(0), 1, 0, log)).rate(0).mean();
    double recent = RateFit.of(new FitInput(List.of(0), 1, 0, faded)).rate(0).mean();
    assertTrue(recent < all / 2, recent + " and " + all);
  }

  @Test
  void givesTheSameNumbersAgain() {
    FitInput input = new FitInput(families(5, 2), 2, 3, log(9, 5, 15, 0.3));
    assertEquals(RateFit.of(input).rate(3), RateFit.of(input).rate(3));
  }

  @Test
  void muchHistoryNeedsFewerDraws() {
    int[][] most = {{2_000, 160, 97}, {2_001, 96, 65}, {4_000, 96, 65}, {4_001, 64, 33}};
    for (int[] trips : most) {
      List<Observation> log = Collections.nCopies(trips[0], trip(0, 4, 1));
      int draws = RateFit.of(new FitInput(List.of(0), 1, 0, log)).draws().size();
      assertTrue(draws <= trips[1] && draws >= trips[2], draws + " after " + trips[0]);
    }
  }

  @Test
  void unitsOfTimeDoNotMatter() {
    // Minutes for hours. The prior of the common rate is not free of scale, so it moves along.
    List<Observation> log = log(10, 6, 20, 0.2);
    List<Observation> minutes = new ArrayList<>();
    for (Observation o : log) {
      minutes.add(
          new Observation(
              o.style(),
              o.trip(),
              60 * o.hours(),
              o.days(),
              o.cover(),
              o.lostPieces(),
              o.atLeast(),
              1));
    }
    Hyperprior weak = Hyperprior.WEAK;
    Hyperprior perMinute = Priors.weak(weak.logRateCentre() - Math.log(60), weak.walk());
    RateFit fit =
        RateFit.of(new FitInput(families(6, 2), 2, 3, log), weak, Beliefs.NONE, RateFit.DRAWS);
    RateFit other =
        RateFit.of(new FitInput(families(6, 2), 2, 3, minutes), perMinute, Beliefs.NONE, 160);
    for (int s = 0; s < 6; s++) {
      double rate = fit.rate(s).mean();
      // The lattice of log rates lies differently, so the climb ends a hair elsewhere.
      assertEquals(rate, 60 * other.rate(s).mean(), 1e-3 * rate);
      // The ends of intervals are read off cells, which lie differently.
      assertEquals(fit.rate(s).low90(), 60 * other.rate(s).low90(), 5e-3 * rate);
      assertEquals(fit.rate(s).high90(), 60 * other.rate(s).high90(), 5e-3 * rate);
      CountDistribution ours = fit.losses(s, List.of(new RateFit.Term(12, 2, 1)));
      CountDistribution theirs = other.losses(s, List.of(new RateFit.Term(720, 2, 1)));
      for (int n = 0; n < 12; n++) {
        assertEquals(ours.atMost(n), theirs.atMost(n), 2e-4);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 12})
  void fivePercentLieBeyondEitherEndOfAnInterval(int lost) {
    List<Observation> log = List.of(trip(0, 3, lost), trip(0, 4, lost / 2));
    RateFit fit =
        RateFit.of(
            new FitInput(List.of(0), 1, 0, log),
            Priors.weak(Hyperprior.Walk.NONE),
            Beliefs.NONE,
            RateFit.DRAWS);
    // All hyperparameters' weights at once, finely: the share of the weights beyond either end.
    double step = fit.data().styles[0].step;
    double[] weights = fit.marginal(0);
    double below = 0;
    double above = 0;
    for (int i = 0; i < weights.length; i++) {
      double x = (fit.data().styles[0].first + i) * step;
      below += weights[i] * within((Math.log(fit.rate(0).low90()) - x) / step);
      above += weights[i] * (1 - within((Math.log(fit.rate(0).high90()) - x) / step));
    }
    assertEquals(0.05, below, 2e-3);
    assertEquals(0.05, above, 2e-3);
  }

  /** Share of a point's even cell, 0 to 1, below a place given in cells from the point. */
  private static double within(double place) {
    return Math.max(0, Math.min(1, place + 0.5));
  }

  @Test
  void weightsLearnWhatATripTells() {
    List<Observation> log = List.of(trip(0, 3, 1), trip(0, 4, 0));
    RateFit before = RateFit.of(new FitInput(List.of(0, 0), 1, 0, log));
    RateFit after = before.learning(List.of(trip(0, 5, 3)));
    double[] rate = before.data().styles[0].rate;
    double chance = 0;
    double mean = 0;
    double others = 0;
    for (int d = 0; d < before.draws().size(); d++) {
      HyperPosterior.Draw draw = before.draws().get(d);
      double here = 0;
      for (int i = 0; i < rate.length; i++) {
        double size = draw.given().hyper().size();
        double both =
            before.rows(0)[d][i] * Math.exp(NegativeBinomial.logPmf(3, 5 * rate[i], size));
        here += both;
        mean += draw.weight() * both * rate[i];
      }
      chance += draw.weight() * here;
      for (int i = 0; i < before.rows(1)[d].length; i++) {
        double other = before.data().styles[1].rate[i];
        others += draw.weight() * here * before.rows(1)[d][i] * other;
      }
    }
    assertEquals(mean / chance, after.rate(0).mean(), 1e-6 * mean / chance);
    assertEquals(others / chance, after.rate(1).mean(), 1e-6 * others / chance);
    // As a fit of all three trips has it, up to what the draws of before leave out.
    List<Observation> all = List.of(trip(0, 3, 1), trip(0, 4, 0), trip(0, 5, 3));
    double whole = RateFit.of(new FitInput(List.of(0, 0), 1, 0, all)).rate(0).mean();
    assertEquals(whole, after.rate(0).mean(), 0.05 * whole);
  }

  @Test
  void longTailsAreFollowedToATenThousandth() {
    // Almost nothing is known of the rate: the tail is far longer than 500 and 15 means.
    RateFit fit =
        RateFit.of(
            new FitInput(List.of(0), 1, 0, List.of(trip(0, 0.1, 1))), wide(), Beliefs.NONE, 160);
    CountDistribution losses = fit.losses(0, List.of(new RateFit.Term(8, 1, Observation.MIX)));
    assertTrue(losses.cut() > 500 + 15 * losses.mean());
    assertTrue(losses.above(losses.cut() - 1) < 1e-4, "left out " + losses.above(losses.cut() - 1));
  }

  private static Hyperprior wide() {
    return new Hyperprior(
        Math.log(0.06),
        1.5,
        Math.log(0.4),
        0.8,
        Math.log(2),
        0.7,
        Math.log(0.2),
        1.0,
        0.5,
        Hyperprior.Walk.NONE);
  }
}
