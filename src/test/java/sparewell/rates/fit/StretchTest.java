package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;

/** Coming losses out of a fit, whole, shared and as quickly as a growing log needs them. */
class StretchTest {
  private static final RateFit FIT = RateFit.of(input());

  private static FitInput input() {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < 12; t++) {
      log.add(new Observation(0, t, 2, 1, t % 2, t % 3 == 0 ? 2 + t % 2 : 0, false, 1));
      log.add(new Observation(1, t, 3, 1, t % 2, t % 6 == 0 ? 1 : 0, false, 1));
    }
    return new FitInput(List.of(0, 0, 1), 2, 2, log);
  }

  private static final RateFit.Term FIRST = new RateFit.Term(6, 1, 0);
  private static final RateFit.Term SECOND = new RateFit.Term(9, 2, 1);

  @Test
  void unequalSharesRiseAndFallTogether() {
    double own = 1.3;
    BetaDistribution one = new BetaDistribution(null, own, 4);
    BetaDistribution two = new BetaDistribution(null, own, 1.5);
    int steps = 200;
    double[] byHand = new double[6];
    for (int k = 0; k < steps; k++) {
      double level = (k + 0.5) / steps;
      RateFit.Term first =
          new RateFit.Term(6 * one.inverseCumulativeProbability(level), 1, FIRST.cover());
      RateFit.Term second =
          new RateFit.Term(9 * two.inverseCumulativeProbability(level), 2, SECOND.cover());
      CountDistribution given = FIT.losses(0, List.of(first, second));
      for (int n = 0; n < byHand.length; n++) {
        byHand[n] += given.atMost(n) / steps;
      }
    }
    CountDistribution shared =
        FIT.shared(0, List.of(List.of(FIRST), List.of(SECOND)), own, List.of(4.0, 1.5));
    for (int n = 0; n < byHand.length; n++) {
      assertEquals(byHand[n], shared.atMost(n), 1e-3, "n " + n);
    }
  }

  @Test
  void anItemsMeanIsItsShareOfEachGroup() {
    double first = FIT.losses(0, List.of(FIRST)).mean();
    double second = FIT.losses(0, List.of(SECOND)).mean();
    List<List<RateFit.Term>> groups = List.of(List.of(FIRST), List.of(SECOND, FIRST));
    for (double[] rests : new double[][] {{4, 1.5}, {0, 2}, {3, 0}, {2, 2}, {0, 0}}) {
      double own = 2.2;
      double mean = first * own / (own + rests[0]) + (second + first) * own / (own + rests[1]);
      CountDistribution losses = FIT.shared(0, groups, own, List.of(rests[0], rests[1]));
      assertEquals(mean, losses.mean(), 1e-4 * mean);
    }
  }

  @Test
  void lossesGrowWithTheHours() {
    double mean = FIT.losses(1, List.of(new RateFit.Term(3, 1, 1))).mean();
    assertEquals(4 * mean, FIT.losses(1, List.of(new RateFit.Term(12, 2, 1))).mean(), 1e-4 * mean);
    assertEquals(0, FIT.losses(1, List.of()).mean());
    assertEquals(0, FIT.losses(1, List.of(new RateFit.Term(0, 1, 1))).mean());
    // Spread over more days, the same hours bring less extra variation.
    double oneDay = FIT.losses(1, List.of(new RateFit.Term(30, 1, 1))).atMost(0);
    double fiveDays = FIT.losses(1, List.of(new RateFit.Term(30, 5, 1))).atMost(0);
    assertTrue(oneDay > fiveDays);
  }

  /** Rates that walk so far that nobody can overlook it. */
  private static final Hyperprior WALKING = Priors.weak(new Hyperprior.Walk(Math.log(0.05), 0.1));

  @Test
  void ratesThatWalkLeaveMoreInDoubtAndTheMeanAsItIs() {
    RateFit walking = RateFit.of(input(), WALKING, Beliefs.NONE, RateFit.DRAWS);
    RateFit staying =
        RateFit.of(input(), Priors.weak(Hyperprior.Walk.NONE), Beliefs.NONE, RateFit.DRAWS);
    CountDistribution far = walking.losses(0, List.of(SECOND));
    CountDistribution near = staying.losses(0, List.of(SECOND));
    assertEquals(near.mean(), far.mean(), 1e-4 * near.mean());
    assertTrue(far.above(9) > 1.02 * near.above(9), far.above(9) + " and " + near.above(9));
    assertTrue(walking.rate(0).high90() > 1.02 * staying.rate(0).high90());
    assertTrue(walking.rate(0).low90() < 0.98 * staying.rate(0).low90());
  }

  @Test
  void ratesThatWalkAgreeWithRatesPlayedOut() {
    RateFit walking = RateFit.of(input(), WALKING, Beliefs.NONE, RateFit.DRAWS);
    Dice dice = new Dice(walking);
    int times = 40_000;
    int[] most = new int[60];
    for (int i = 0; i < times; i++) {
      dice.again();
      most[Math.min(59, dice.lost(0, List.of(FIRST, SECOND)))]++;
    }
    CountDistribution losses = walking.losses(0, List.of(FIRST, SECOND));
    double atMost = 0;
    for (int n = 0; n < 25; n++) {
      atMost += (double) most[n] / times;
      double error = Math.sqrt(losses.atMost(n) * losses.above(n) / times);
      assertEquals(atMost, losses.atMost(n), 4 * error, "n " + n);
    }
  }
}
