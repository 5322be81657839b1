package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import sparewell.numerics.NegativeBinomial;

class OwnEvidenceTest {
  private static final int[] LOST = {0, 6, 0, 0, 1, 0, 4, 0, 0, 0};
  private static final double HOURS = 5;

  private static FitInput log() {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < LOST.length; t++) {
      log.add(new Observation(0, t, HOURS, 1, Observation.MIX, LOST[t], false, 1));
    }
    return new FitInput(List.of(0), 1, 0, log);
  }

  /** Chance of the log at a rate, whatever the size: summed over the prior of the size. */
  private static double likelihood(double rate) {
    double sum = 0;
    for (double z = -5; z <= 5; z += 0.01) {
      double size = Math.exp(Hyperprior.WEAK.logSizeCentre() + z * Hyperprior.WEAK.logSizeSpread());
      double log = -z * z / 2;
      for (int lost : LOST) {
        log += NegativeBinomial.logPmf(lost, HOURS * rate, size);
      }
      sum += Math.exp(log);
    }
    return sum;
  }

  @Test
  void whatALogTellsOfARateCountsItsLossesOnce() {
    // Losses in lumps: the log itself says that days differ much. Counted again in the weights of
    // the draws, that made what it tells of the rate too weak, by up to 0.14 here.
    RateFit fit = RateFit.of(log());
    double[] rate = fit.data().styles[0].rate;
    double[] told = new OwnEvidence(fit).likelihood(0);
    int from = 0;
    while (rate[from] < 0.07) {
      from++;
    }
    for (int i = from; rate[i] < 0.6; i++) {
      double exact = Math.log(likelihood(rate[i]) / likelihood(rate[from]));
      assertEquals(exact, Math.log(told[i] / told[from]), 0.031, "at " + rate[i]);
    }
  }

  @Test
  void aRowStandsForItsLogWithAboutTheSameMeanAndVariance() {
    RateFit fit = RateFit.of(log());
    OwnEvidence.Gamma row = new OwnEvidence(fit).rate(0).orElseThrow();
    double[] log = new double[161];
    double[] told = new double[log.length];
    double[] again = new double[log.length];
    for (int i = 0; i < log.length; i++) {
      log[i] = (i - 120) * 0.05;
      double z = (log[i] + 2.5) / 0.7;
      double before = Math.exp(-z * z / 2);
      told[i] = before * likelihood(Math.exp(log[i]));
      again[i] = before * Math.exp(row.pieces() * log[i] - row.hours() * Math.exp(log[i]));
    }
    double mean = mean(log, told, 1);
    double variance = mean(log, told, 2) - mean * mean;
    assertEquals(mean, mean(log, again, 1), 0.1 * Math.sqrt(variance));
    double itsMean = mean(log, again, 1);
    assertEquals(variance, mean(log, again, 2) - itsMean * itsMean, 0.2 * variance);
  }

  /** Six families of three styles, 40 trips in two covers; the first family loses 1 in 10 hours. */
  static FitInput season() {
    Random random = new Random(7);
    List<Integer> families = new ArrayList<>();
    List<Observation> log = new ArrayList<>();
    for (int s = 0; s < 18; s++) {
      families.add(s / 3);
      double rate = s < 3 ? 0.1 : 0.1 * Math.exp(0.9 * (s / 3 - 3) + 0.5 * random.nextGaussian());
      for (int t = 0; t < 40; t++) {
        double day = s < 3 ? 1 : -Math.log(random.nextDouble());
        double mean = 10 * rate * day * (t % 2 == 0 ? 0.6 : 1.4);
        int lost = (int) (mean + random.nextDouble());
        log.add(new Observation(s, t, 10, 1, t % 2, lost, false, 1));
      }
    }
    return new FitInput(families, 6, 2, log);
  }

  /**
   * Evidence is what turns the prior into what the fit believes: their product is its posterior.
   */
  @Test
  void evidenceTimesPriorIsThePosterior() {
    RateFit fit = RateFit.of(season());
    OwnEvidence evidence = new OwnEvidence(fit);
    Hyperprior prior = Hyperprior.WEAK;
    double rate = prior.logRateSpread();
    double wide = rate * Math.sqrt(5 / 3.0); // Student t with 5 degrees of freedom
    times(
        evidence.commonRate(),
        prior.logRateCentre(),
        wide,
        fit,
        z -> prior.logRateCentre() + rate * z[0],
        1e-9);
    double family = prior.logFamilySpread();
    times(
        evidence.familySpread(),
        prior.logFamilyCentre(),
        family,
        fit,
        z -> prior.logFamilyCentre() + family * z[1],
        1e-9);
    double style = prior.logStyleSpread();
    times(
        evidence.styleSpread(),
        prior.logStyleCentre(),
        style,
        fit,
        z -> prior.logStyleCentre() + style * z[2],
        1e-9);
    double size = prior.logSizeSpread();
    times(
        evidence.daySize(),
        prior.logSizeCentre(),
        size,
        fit,
        z -> prior.logSizeCentre() + size * z[3],
        1e-9);
    double[] mix = {0.5, 0.5};
    Random random = new Random(1);
    double[] drawn = new double[200_000];
    for (int k = 0; k < drawn.length; k++) {
      double[] z = new double[Hyper.COMMON + 2];
      z[Hyper.COMMON] = random.nextGaussian();
      z[Hyper.COMMON + 1] = random.nextGaussian();
      drawn[k] = Math.log(Hyper.at(z, prior, mix, Beliefs.NONE).multiplier()[0]);
    }
    double centre = Arrays.stream(drawn).average().getAsDouble();
    double variance =
        Arrays.stream(drawn).map(x -> Math.pow(x - centre, 2)).average().getAsDouble();
    times(
        evidence.cover(0),
        centre,
        Math.sqrt(variance),
        fit,
        z -> Math.log(Hyper.at(z, prior, mix, Beliefs.NONE).multiplier()[0]),
        0.01);
  }

  private static void times(
      Optional<OwnEvidence.Normal> evidence,
      double centre,
      double spread,
      RateFit fit,
      ToDoubleFunction<double[]> value,
      double close) {
    double[] values =
        fit.draws().stream().mapToDouble(draw -> value.applyAsDouble(draw.z())).toArray();
    double[] weights = fit.draws().stream().mapToDouble(HyperPosterior.Draw::weight).toArray();
    double mean = mean(values, weights, 1);
    double variance = mean(values, weights, 2) - mean * mean;
    double its = 1 / evidence.orElseThrow().variance();
    double before = 1 / (spread * spread);
    assertEquals(variance, 1 / (its + before), close * variance);
    assertEquals(
        mean, (its * evidence.orElseThrow().mean() + before * centre) / (its + before), close);
  }

  @Test
  void aFamilyWhoseStylesAgreeIsKnownAtTheirRate() {
    OwnEvidence.Normal family = new OwnEvidence(RateFit.of(season())).family(0).orElseThrow();
    assertEquals(0.1, family.variance(), 0.07);
    assertEquals(Math.log(0.1), family.mean(), 0.15);
  }

  private static double mean(double[] values, double[] weights, int power) {
    double all = 0;
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      all += weights[i];
      sum += weights[i] * Math.pow(values[i], power);
    }
    return sum / all;
  }
}
