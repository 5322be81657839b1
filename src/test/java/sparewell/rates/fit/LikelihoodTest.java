package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.numerics.NegativeBinomial;

/** The likelihood of a style on a lattice, and the density it is weighed with, term by term. */
class LikelihoodTest {
  private static final double[] MULTIPLIER = {0.4, 1.7, 3};

  private static List<Observation> log(long seed, int trips) {
    Random random = new Random(seed);
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      log.add(
          new Observation(
              0,
              0,
              t % 3 == 0 ? 2 : 0.01 + 6 * random.nextDouble(),
              1 + random.nextInt(3),
              random.nextInt(4) - 1,
              t % 2 == 0 ? 0 : random.nextInt(9),
              random.nextInt(4) == 0,
              t % 5 == 0 ? 1 : 0.2 + 0.8 * random.nextDouble()));
    }
    return log;
  }

  private static double factor(Observation o) {
    return o.cover() == Observation.MIX ? 1 : MULTIPLIER[o.cover()];
  }

  private static double byTerms(List<Observation> log, double size, double rate) {
    double sum = 0;
    for (Observation o : log) {
      double mean = rate * o.hours() * factor(o);
      sum +=
          o.weight()
              * (o.atLeast()
                  ? NegativeBinomial.logAtLeast(o.lostPieces(), mean, size * o.days())
                  : NegativeBinomial.logPmf(o.lostPieces(), mean, size * o.days()));
    }
    return sum;
  }

  private static StyleHistory.Likelihood likelihood(List<Observation> log, double size) {
    return new StyleHistory(log).at(size, MULTIPLIER, new LatticeShift[MULTIPLIER.length + 1]);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.02, 0.7, 3, 400, 999, 2000, 1e7})
  void theLatticeGivesTheSumOfTheTrips(double size) {
    for (int trips : new int[] {1, 2, 30}) {
      List<Observation> log = log(trips, trips);
      StyleHistory history = new StyleHistory(log);
      double units = log.stream().mapToDouble(o -> o.lostPieces() + size * o.days()).sum();
      for (int halvings : new int[] {0, 1, 2, 4}) {
        double unit = RateNodes.WIDEST / (1 << halvings);
        StyleHistory.Likelihood likelihood =
            history.at(size, MULTIPLIER, new LatticeShift[MULTIPLIER.length + 1]);
        // One after the other, so that the lattice of the sums is widened on either side.
        for (int[] place :
            new int[][] {{-5, 1, 3}, {-60, 2, 40}, {3, 3, 9}, {-9, 5, 1}, {1, 8, 4}}) {
          double[] rate = new double[place[2]];
          for (int i = 0; i < rate.length; i++) {
            rate[i] = Math.exp((place[0] + i * place[1]) * unit);
          }
          double[] logs = likelihood.at(halvings, place[0], place[1], rate);
          for (int i = 0; i < rate.length; i++) {
            double exact = byTerms(log, size, rate[i]);
            double tolerance = 2e-9 * Math.min(units, 1e3) + 1e-11 * Math.abs(exact);
            assertEquals(exact, logs[i], tolerance);
            assertEquals(exact, likelihood.at(Math.log(rate[i]), rate[i]), tolerance);
          }
        }
      }
    }
  }

  @Test
  void exposureAndPiecesAreWeightedSums() {
    List<Observation> log =
        List.of(
            new Observation(0, 0, 3, 1, 0, 2, false, 0.5),
            new Observation(0, 0, 4, 2, Observation.MIX, 0, false, 1),
            new Observation(0, 0, 5, 2, 1, 6, true, 0.25),
            new Observation(0, 0, 9, 1, 2, 0, true, 1)); // tells nothing
    StyleHistory.Likelihood likelihood = likelihood(log, 2);
    assertEquals(0.5 * 3 * 0.4 + 4 + 0.25 * 5 * 1.7, likelihood.exposure, 1e-12);
    assertEquals(0.5 * 2 + 0.25 * 6, likelihood.lost, 1e-12);
    // 2.5 pieces on 0.5 + 2 + 0.5 days of size 2 tell as much as 1 / (1 / 2.5 + 1 / 6).
    assertEquals(1 / (1 / 2.5 + 1 / 6.0), likelihood.pieces, 1e-12);
    assertEquals(0, likelihood(List.of(log.get(1)), 2).pieces);
    assertFalse(new StyleHistory(log.subList(1, 2)).empty());
    assertFalse(new StyleHistory(log.subList(2, 3)).empty());
    assertTrue(new StyleHistory(log.subList(3, 4)).empty());
  }

  @Test
  void theQuickLogarithmIsAsGoodAsSaid() {
    for (double x = 1e-9; x < 1e6; x *= 1.13) {
      assertEquals(1, LogSums.log1p(x) / Math.log1p(x), 2e-13, "x " + x);
    }
    assertEquals(0, LogSums.log1p(0));
    assertEquals(1, LogSums.log1p(0.02) / Math.log1p(0.02), 2e-13);
  }

  @Test
  void theKernelIsTheGammaDensityOfALogRate() {
    double unit = 0.04;
    for (double shape : new double[] {0.09, 1, 7, 390}) {
      GammaDistribution gamma = new GammaDistribution(null, shape, 1 / shape);
      GammaKernel kernel = new GammaKernel(shape, unit);
      assertEquals(unit, kernel.unit());
      for (int reach : new int[] {-3, -2, -40, -200}) {
        kernel.reach(reach);
        for (int mean : new int[] {0, 17, -90}) {
          for (int u = -3; u < 60; u += 7) {
            int place = kernel.index(mean, mean + u);
            double x = Math.exp(u * unit);
            double exact = Math.log(x) + gamma.logDensity(x);
            assertEquals(exact, kernel.logNorm() + kernel.logDensity(u), 1e-9);
            double here = place < kernel.density().length ? kernel.density()[place] : 0;
            assertEquals(Math.exp(kernel.logDensity(u)), here, 1e-12, shape + " at " + u);
          }
        }
      }
      assertEquals(shape * Math.exp(-17 * unit), kernel.pull(17), 1e-9 * shape);
      // The table starts where it was asked to, and ends where nothing is left.
      assertEquals(0, kernel.index(5, 5 - 200));
      int last = kernel.density().length - 1 - 200;
      assertTrue(kernel.logDensity(last) > -701 && kernel.logDensity(last + 2) < -699);
      assertEquals(last + 1, kernel.end(0, 0, 1));
      assertEquals(last / 3 + 1, kernel.end(4, 4, 3));
      assertEquals(1, kernel.end(0, last, 3));
      assertEquals(0, kernel.end(0, last + 1, 3));
    }
  }
}
