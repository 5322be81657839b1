package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;

/** Futures against the exact distribution: mean, and variance (a Poisson adds its mean). */
class RateFuturesTest {
  @Test
  void futuresHaveTheMeanAndVarianceOfTheDistribution() {
    RateFit fit = RateFit.of(OwnEvidenceTest.season());
    RateFutures futures = new RateFutures(fit, 4_000);
    for (int style : new int[] {0, 7, 16}) {
      for (int cover = 0; cover < 2; cover++) {
        for (int steps : new int[] {1, 60}) {
          RateFit.Term term = new RateFit.Term(9, 3, cover, steps);
          CountDistribution exact = fit.losses(style, List.of(term));
          double[][] rates = futures.rates(style, new int[] {steps});
          double[] losses = futures.losses(rates, 0, term, 100 + style);
          double mean = Arrays.stream(losses).average().getAsDouble();
          double squares = Arrays.stream(losses).map(x -> x * x).average().getAsDouble();
          double square = 0;
          for (int n = 1; n <= exact.cut(); n++) {
            square += n * (double) n * exact.probabilityOf(n);
          }
          double variance = square - exact.mean() * exact.mean();
          assertEquals(exact.mean(), mean, 0.01 * exact.mean());
          assertEquals(variance, squares - mean * mean + mean, 0.03 * variance);
        }
      }
    }
  }
}
