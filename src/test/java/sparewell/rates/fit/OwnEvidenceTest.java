package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
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
