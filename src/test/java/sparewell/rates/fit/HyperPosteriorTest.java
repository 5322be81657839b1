package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;

/** Hyperparameters: how they are coded, sampled and weighed. */
class HyperPosteriorTest {
  private static final double[] NO_COVER = {};

  private static double[][] covariance(double[][] root) {
    RealMatrix matrix = new Array2DRowRealMatrix(root);
    return matrix.multiply(matrix.transpose()).getData();
  }

  @Test
  void aPointIsDecodedOnTheLogScale() {
    Hyper centre = Hyper.at(new double[4], Hyperprior.WEAK, NO_COVER, Beliefs.NONE);
    // A typical style loses 0.06 an hour; rates with CV 0.5 have a mean a factor sqrt(1.25) above.
    assertEquals(Math.log(0.06 * Math.sqrt(1.25)), centre.logRate(), 1e-12);
    assertEquals(0.4, centre.familySpread(), 1e-12);
    assertEquals(4, centre.shape(), 1e-12);
    assertEquals(2, centre.size(), 1e-12);
    Hyper off =
        Hyper.at(
            new double[] {1, -1, 2, 0.5, 1, -1},
            Hyperprior.WEAK,
            new double[] {0.25, 0.75},
            Beliefs.NONE);
    double style = 0.5 * Math.exp(1.4);
    assertEquals(Math.log(0.06) + 0.7 + Math.log(1 + style * style) / 2, off.logRate(), 1e-12);
    assertEquals(0.4 * Math.exp(-0.8), off.familySpread(), 1e-12);
    assertEquals(1 / (style * style), off.shape(), 1e-12);
    assertEquals(2 * Math.exp(0.5), off.size(), 1e-12);
    // exp(0.5) and exp(-0.5), made to average 1 over the mix.
    double mean = 0.25 * Math.exp(0.5) + 0.75 * Math.exp(-0.5);
    assertArrayEquals(
        new double[] {Math.exp(0.5) / mean, Math.exp(-0.5) / mean}, off.multiplier(), 1e-12);
  }

  @Test
  void besideOthersFewAnglersLieFarOff() {
    Beliefs others = new Beliefs(List.of(new Beliefs.Belief(-2, 0.1)), List.of());
    double centre = Hyper.at(new double[4], Hyperprior.WEAK, NO_COVER, others).logRate();
    for (double z : new double[] {-3.5, -1, 1, 3.5, 4}) {
      double[] at = {z, 0, 0, 0};
      double off = Hyper.at(at, Hyperprior.WEAK, NO_COVER, others).logRate() - centre;
      assertEquals(0.7 * z + 0.7 * Math.pow(z / 3.5, 3), off, 1e-12);
    }
  }

  @Test
  void beyondTheRangeThereIsItsRim() {
    Hyper low =
        Hyper.at(new double[] {-99, -99, -99, -99}, Hyperprior.WEAK, NO_COVER, Beliefs.NONE);
    assertEquals(-25, low.logRate());
    assertEquals(0.005, low.familySpread());
    assertEquals(400, low.shape(), 1e-9);
    assertEquals(0.01, low.size());
    Hyper high = Hyper.at(new double[] {99, 99, 99, 99}, Hyperprior.WEAK, NO_COVER, Beliefs.NONE);
    assertEquals(25, high.logRate());
    assertEquals(3, high.familySpread());
    assertEquals(1 / (3.5 * 3.5), high.shape(), 1e-12);
    assertEquals(1e4, high.size());
  }

  @Test
  void thePriorIsStudentForTheRateAndNormalElsewhere() {
    TDistribution student = new TDistribution(null, 5);
    for (double z0 : new double[] {-3, 0, 0.4, 6}) {
      for (double z3 : new double[] {-1, 2}) {
        double exact = student.logDensity(z0) - student.logDensity(0) - z3 * z3 / 2 - 0.3 * 0.3 / 2;
        assertEquals(exact, Hyper.logPrior(new double[] {z0, 0.3, 0, 0, z3}), 1e-10);
      }
    }
  }

  private static double[][] times(double[][] a, double[][] b) {
    double[][] product = new double[a.length][a.length];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < a.length; j++) {
        for (int k = 0; k < a.length; k++) {
          product[i][j] += a[i][k] * b[k][j];
        }
      }
    }
    return product;
  }

  private static final double[][] PRECISION = {{4, 1, 0.2}, {1, 2, -0.3}, {0.2, -0.3, 1}};

  @Test
  void axesSpanTheInverseOfThePrecision() {
    double[][] covariance = covariance(HyperSampler.axes(PRECISION));
    double[][] unit = times(covariance, PRECISION);
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        assertEquals(i == j ? 1 : 0, unit[i][j], 1e-12);
      }
    }
    // Where the data say less than nothing, hardly wider than the prior.
    double[][] flat = covariance(HyperSampler.axes(new double[][] {{0.1, 0}, {0, -3}}));
    assertEquals(1 / 0.6, flat[0][0], 1e-12);
    assertEquals(1 / 0.6, flat[1][1], 1e-12);
  }

  @Test
  void pointsAreSpreadLikeAStudentT() {
    double[] peak = {1, -2, 0.5};
    int count = 4000;
    List<HyperSampler.Point> points =
        HyperSampler.points(HyperSampler.axes(PRECISION), peak, count);
    assertEquals(count, points.size());
    double[][] inner = new double[3][3];
    FDistribution ratio = new FDistribution(null, 3, 5);
    double middle = 3 * ratio.inverseCumulativeProbability(0.5);
    double far = 3 * ratio.inverseCumulativeProbability(0.9);
    double covers = 0;
    double[] together = new double[3];
    int within = 0;
    int notFar = 0;
    for (int p = 0; p < count; p++) {
      HyperSampler.Point point = points.get(p);
      HyperSampler.Point mirrored = points.get(p ^ 1);
      assertEquals(point.newCover(), -mirrored.newCover());
      covers += point.newCover() * point.newCover() / count;
      double[] away = new double[3];
      double square = 0;
      for (int i = 0; i < 3; i++) {
        away[i] = point.z()[i] - peak[i];
        assertEquals(away[i], peak[i] - mirrored.z()[i], 1e-9);
        together[i] += Math.signum(away[i]) * point.newCover() / count;
      }
      for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) {
          square += away[i] * PRECISION[i][j] * away[j];
        }
      }
      // The density of a Student t with 5 degrees of freedom in 3 dimensions.
      assertEquals(-4 * Math.log(1 + square / 5), point.logDensity(), 1e-9);
      within += square < middle ? 1 : 0;
      if (square < far) {
        notFar++;
        for (int i = 0; i < 3; i++) {
          for (int j = 0; j < 3; j++) {
            inner[i][j] += away[i] * away[j];
          }
        }
      }
    }
    assertEquals(1, covers, 0.02);
    assertArrayEquals(new double[3], together, 0.05, "a new cover has nothing to do with the rest");
    // A third of the square is distributed as F with 3 and 5 degrees of freedom.
    assertEquals(0.5, (double) within / count, 0.01);
    assertEquals(0.9, (double) notFar / count, 0.01);
    double[][] unit = times(inner, PRECISION);
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        assertEquals(i == j ? 1 : 0, unit[i][j] / unit[0][0], 0.06);
      }
    }
  }

  private static FitInput input(int trips, int covers) {
    Random random = new Random(8);
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      for (int s = 0; s < 4; s++) {
        int cover = covers == 0 ? Observation.MIX : t % covers;
        int lost = random.nextInt(4) == 0 ? 1 + random.nextInt(1 + s) : 0;
        log.add(new Observation(s, t, 1 + s % 2, 1, cover, lost, false, 1));
      }
    }
    return new FitInput(List.of(0, 0, 1, 1), 2, covers, log);
  }

  private static HyperPosterior posterior(FitInput input, int draws) {
    return HyperPosterior.of(new FitData(input, Hyperprior.WEAK, Beliefs.NONE), draws);
  }

  private static double mean(FitInput input, HyperPosterior posterior, int style) {
    StyleData data = new FitData(input, Hyperprior.WEAK, Beliefs.NONE).styles[style];
    double mean = 0;
    for (HyperPosterior.Draw draw : posterior.draws()) {
      double[] weights = draw.given().rate(style, input.familyOfStyle().get(style));
      for (int i = 0; i < weights.length; i++) {
        mean += draw.weight() * weights[i] * data.rate[i];
      }
    }
    return mean;
  }

  @Test
  void weightsSumToOneAndANewCoverAveragesOne() {
    HyperPosterior posterior = posterior(input(6, 2), RateFit.DRAWS);
    assertTrue(posterior.converged());
    assertEquals(
        1, posterior.draws().stream().mapToDouble(HyperPosterior.Draw::weight).sum(), 1e-6);
    assertEquals(
        1, posterior.draws().stream().mapToDouble(d -> d.weight() * d.newCover()).sum(), 1e-6);
    double squares = posterior.draws().stream().mapToDouble(d -> d.weight() * d.weight()).sum();
    assertEquals(1 / squares, posterior.effective(), 1e-3);
    for (HyperPosterior.Draw draw : posterior.draws()) {
      assertEquals(1, draw.multiplier(Observation.MIX));
      assertEquals(draw.newCover(), draw.multiplier(Observation.NEVER_LOGGED));
      assertEquals(draw.given().hyper().multiplier()[1], draw.multiplier(1));
    }
  }

  /** All four hyperparameters on a grid of a step of 0.8 prior standard deviations. */
  @Test
  void drawsAgreeWithAGridOverAllHyperparameters() {
    List<Observation> log = new ArrayList<>();
    for (int lost : new int[] {0, 2, 0, 1, 4}) {
      log.add(new Observation(0, 0, 3, 1, Observation.MIX, lost, false, 1));
    }
    FitInput input = new FitInput(List.of(0), 1, 0, log);
    FitData data = new FitData(input, Hyperprior.WEAK, Beliefs.NONE);
    double sum = 0;
    double mean = 0;
    double none = 0;
    double[] z = new double[4];
    int most = 4;
    for (int i = 0; i < Math.pow(2 * most + 1, 4); i++) {
      int rest = i;
      for (int k = 0; k < 4; k++) {
        z[k] = 0.8 * (rest % (2 * most + 1) - most);
        rest /= 2 * most + 1;
      }
      Hyper hyper = Hyper.at(z, Hyperprior.WEAK, NO_COVER, Beliefs.NONE);
      Conditional given = new Conditional(data, hyper);
      double weight = Math.exp(given.logEvidence() + Hyper.logPrior(z) + 8);
      double[] weights = given.rate(0, 0);
      sum += weight;
      for (int w = 0; w < weights.length; w++) {
        double rate = data.styles[0].rate[w];
        mean += weight * weights[w] * rate;
        none += weight * weights[w] * Math.pow(1 + 5 * rate / hyper.size(), -hyper.size());
      }
    }
    RateFit fit = RateFit.of(input);
    assertEquals(mean / sum, fit.rate(0).mean(), 0.015 * mean / sum);
    CountDistribution losses = fit.losses(0, List.of(new RateFit.Term(5, 1, Observation.MIX)));
    assertEquals(none / sum, losses.atMost(0), 0.005);
  }

  @Test
  void aPeakAloneIsOneDraw() {
    FitInput input = input(20, 2);
    HyperPosterior peak = posterior(input, 0);
    assertEquals(1, peak.draws().size());
    assertEquals(1, peak.draws().get(0).weight());
    assertEquals(1, peak.draws().get(0).newCover());
    assertEquals(1, peak.effective());
    assertTrue(peak.converged());
    HyperPosterior draws = posterior(input, RateFit.DRAWS);
    for (int s = 0; s < 4; s++) {
      assertEquals(mean(input, draws, s), mean(input, peak, s), 0.15 * mean(input, draws, s));
    }
  }

  @Test
  void someTripsLaterIsAsGoodAsAnew() {
    HyperPosterior first = posterior(input(8, 0), 32);
    for (int covers : new int[] {0, 2}) {
      FitInput grown = input(16, covers);
      HyperPosterior later = first.after(new FitData(grown, Hyperprior.WEAK, Beliefs.NONE), 32);
      HyperPosterior anew = posterior(grown, RateFit.DRAWS);
      assertTrue(later.converged());
      assertTrue(later.draws().size() <= 32 && later.effective() > 8);
      for (int s = 0; s < 4; s++) {
        assertEquals(mean(grown, anew, s), mean(grown, later, s), 0.08 * mean(grown, anew, s));
      }
      assertTrue(
          later.after(new FitData(input(30, covers), Hyperprior.WEAK, Beliefs.NONE), 32).effective()
              > 8);
    }
    // With a cover less there is nothing to go on from.
    HyperPosterior bare =
        posterior(input(8, 3), 32)
            .after(new FitData(input(8, 0), Hyperprior.WEAK, Beliefs.NONE), 32);
    assertEquals(mean(input(8, 0), first, 1), mean(input(8, 0), bare, 1), 1e-9);
  }

  @Test
  void tooFewDrawsAreNoFit() {
    // With many trips hardly any of the prior's draws explains the log.
    HyperPosterior much = posterior(input(200, 3), 4);
    assertTrue(much.draws().size() <= 4 && much.effective() < 8);
    assertFalse(much.converged());
  }

  @Test
  void theSearchStartsAtTheRateOfAllTogether() {
    List<Observation> log =
        List.of(
            new Observation(0, 0, 10, 1, Observation.MIX, 4, false, 0.5),
            new Observation(1, 0, 5, 1, Observation.MIX, 3, true, 1),
            new Observation(1, 0, 70, 1, Observation.MIX, 0, true, 1)); // tells nothing
    FitData data =
        new FitData(new FitInput(List.of(0, 0), 1, 0, log), Hyperprior.WEAK, Beliefs.NONE);
    // 5 pieces in 10 hours, and half a piece in as many hours as the prior has it.
    double rate = 5.5 / (10 + 0.5 / 0.06);
    assertEquals((Math.log(rate) - Math.log(0.06)) / 0.7, data.startOfRate(), 1e-12);
  }
}
