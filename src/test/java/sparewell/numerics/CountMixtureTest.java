package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.reference.Reference;

class CountMixtureTest {
  private static CountDistribution one(double mean, double size) {
    CountMixture mixture = new CountMixture();
    mixture.add(1, new double[] {mean}, new double[] {size});
    return mixture.distribution();
  }

  @Test
  void onePartAgreesWithR() {
    for (Reference.Row row : Reference.read("negbin-pmf.csv")) {
      CountDistribution ours = one(row.number("mean"), row.number("size"));
      // The distribution is cut where less than 1e-10 is left.
      assertEquals(row.number("pmf"), ours.probabilityOf(row.whole("k")), 1e-10);
      assertEquals(row.number("cdf"), ours.atMost(row.whole("k")), 1e-10);
    }
  }

  @Test
  void sumsOfEqualSharesAddTheirSizes() {
    // Negative binomials with one success chance add up to one with the sum of the sizes.
    CountMixture mixture = new CountMixture();
    mixture.add(1, new double[] {2, 3}, new double[] {1, 1.5});
    CountDistribution sum = mixture.distribution();
    for (int n = 0; n < 40; n++) {
      assertEquals(Math.exp(NegativeBinomial.logPmf(n, 5, 2.5)), sum.probabilityOf(n), 1e-13);
    }
  }

  @Test
  void sumsOfUnequalSharesAreConvolutions() {
    CountMixture mixture = new CountMixture();
    mixture.add(1, new double[] {0.4, 7}, new double[] {0.3, 12});
    CountDistribution sum = mixture.distribution();
    for (int n = 0; n < 60; n++) {
      double direct = 0;
      for (int j = 0; j <= n; j++) {
        direct +=
            Math.exp(NegativeBinomial.logPmf(j, 0.4, 0.3))
                * Math.exp(NegativeBinomial.logPmf(n - j, 7, 12));
      }
      assertEquals(direct, sum.probabilityOf(n), n < sum.cut() ? 1e-13 : 1e-10);
    }
    assertEquals(7.4, sum.mean(), 1e-12);
  }

  /** A small part of long tail: less than a hundred-thousandth lies beyond 1,000 pieces. */
  @Test
  void aFarTailOfLittleWeightTakesNoBundles() {
    CountMixture mixture = new CountMixture();
    mixture.add(0.99, new double[] {10}, new double[] {2});
    mixture.add(0.01, new double[] {60}, new double[] {0.3});
    CountDistribution sum = mixture.distribution();
    assertEquals(1, sum.bundle());
    for (int n = 0; n < 100; n++) {
      double direct =
          0.99 * Math.exp(NegativeBinomial.logPmf(n, 10, 2))
              + 0.01 * Math.exp(NegativeBinomial.logPmf(n, 60, 0.3));
      assertEquals(direct, sum.probabilityOf(n), 1e-12);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e4, 1e5, 1e6, 1e8, 1e300})
  void aSharpPartOfAnySizeIsCounted(double mean) {
    for (double size : new double[] {1, 1e4, 1e6, 1e12}) {
      CountDistribution sharp = one(mean, size);
      assertEquals(Math.min(mean, 1e8), sharp.mean(), 1e-3);
      assertTrue(sharp.cut() > Math.min(mean, 1e8), "cut at " + sharp.cut());
    }
  }

  @Test
  void aPartOfNothingStandsBesideThousands() {
    CountMixture mixture = new CountMixture();
    mixture.add(0.5, new double[] {0}, new double[] {1});
    mixture.add(0.5, new double[] {5_000}, new double[] {1e9});
    CountDistribution both = mixture.distribution();
    assertEquals(2_500, both.mean(), 1e-9);
    assertEquals(0.5, both.atMost(2_500), 0.001);
  }

  /** R 4.2.2: pnbinom(size = 2, mu = 20000), pnbinom(size = 0.5, mu = 2000), ppois(5000). */
  @ParameterizedTest
  @CsvSource({
    "20000, 2, 20000, 0.594007683141854",
    "20000, 2, 25000, 0.712707635073184",
    "20000, 2, 30000, 0.800851726777455",
    "2000, 0.5, 500, 0.383166857996741",
    "2000, 0.5, 1000, 0.520637147408822",
    "2000, 0.5, 3000, 0.779357484559940",
    "100, 0.01, 1999, 0.987781998744532",
    "5000, 1e9, 4900, 0.079346097957060",
    "5000, 1e9, 5000, 0.503761167770847",
    "5000, 1e9, 5100, 0.922037665459379"
  })
  void largeCountsInBundlesAgreeWithR(double mean, double size, int n, double atMost) {
    CountDistribution large = one(mean, size);
    assertTrue(large.bundle() > 1);
    assertEquals(mean, large.mean(), 1e-9 * mean);
    // Two bundles off at most; of a count as good as known, 4.5 % of its mean.
    int off = 2 * large.bundle() + (size > 1e6 ? (int) (0.045 * mean) : 0);
    assertTrue(large.atMost(n - off) <= atMost && atMost <= large.atMost(n + off));
  }

  /**
   * R 4.2.2: pgamma(3000, shape = s, scale = mean / s, lower = F), 1 / s = 1 / mean + 1 / size, is
   * 0.00005 for the first mean and at least 0.0002 for the second; bundles begin about 0.0001.
   */
  @ParameterizedTest
  @CsvSource({
    "0.05, 28.7063, 40",
    "0.3, 122.5296, 148.2158",
    "0.9, 280.5676, 327.4912",
    "1.5, 398.0434, 456.9362",
    "5, 801.55, 885.3292",
    "50, 1810.695, 1889.79",
    "1e6, 2789.488, 2808.272"
  })
  void bundlesBeginWhereATenThousandthLiesBeyond(double size, double single, double bundled) {
    assertEquals(1, one(single, size).bundle());
    assertEquals(2, one(bundled, size).bundle());
  }

  @Test
  void bundlesKeepTheVariance() {
    CountDistribution large = one(20_000, 1_000);
    double[] mass = large.masses();
    double mean = 0;
    double square = 0;
    for (int k = 0; k < mass.length; k++) {
      double pieces = (double) k * large.bundle();
      mean += mass[k] * pieces;
      square += mass[k] * pieces * pieces;
    }
    assertTrue(large.bundle() > 7);
    assertEquals(20_000, mean, 1);
    assertEquals(20_000 + 20_000.0 * 20_000 / 1_000, square - mean * mean, 1_000);
  }

  /** R 4.2.2: qnbinom(1e-10, 2, mu = 5, lower = F) = 77. */
  @Test
  void isCutWhereHardlyAnythingIsLeft() {
    assertEquals(78, one(5, 2).cut());
  }

  /**
   * R 4.2.2: sum(c(.3, .5, .2) * pnbinom(q, size = c(1.5, .7, 6), mu = c(3, 300, 8000), lower =
   * F)).
   */
  @ParameterizedTest
  @CsvSource({
    "50, 0.582159725725",
    "500, 0.298074541033",
    "2000, 0.201274434774",
    "8000, 0.0891238868088",
    "12000, 0.0231472087108"
  })
  void mixturesOfSmallAndLargeAgreeWithR(int n, double above) {
    CountMixture mixture = new CountMixture();
    mixture.add(0.3, new double[] {3}, new double[] {1.5});
    mixture.add(0.5, new double[] {300}, new double[] {0.7});
    mixture.add(0.2, new double[] {8000}, new double[] {6});
    CountDistribution mixed = mixture.distribution();
    int off = 2 * mixed.bundle();
    assertTrue(mixed.above(n - off) >= above && above >= mixed.above(n + off));
  }

  @Test
  void anyMeanAndSizeGiveADistribution() {
    for (double mean : new double[] {0, 1e-12, 1, 1e4, 1e8, 1e15, 1e300}) {
      for (double size : new double[] {1e-12, 1e-3, 1, 1e6, 1e12}) {
        CountDistribution any = one(mean, size);
        assertTrue(any.mean() >= 0 && any.mean() <= 1e8 * (1 + 1e-12));
        assertTrue(any.cut() > 0 && any.quantile(0.95) >= 0);
        assertTrue(Double.isFinite(any.expectedShortage(10)));
      }
    }
  }

  @Test
  void mixesItsParts() {
    CountMixture mixture = new CountMixture();
    mixture.add(3, new double[] {0.5}, new double[] {2});
    mixture.add(1, new double[] {9}, new double[] {0.7});
    mixture.add(0, new double[] {40}, new double[] {3}); // of no weight
    CountDistribution mixed = mixture.distribution();
    for (int n = 0; n < 50; n++) {
      double direct =
          0.75 * Math.exp(NegativeBinomial.logPmf(n, 0.5, 2))
              + 0.25 * Math.exp(NegativeBinomial.logPmf(n, 9, 0.7));
      assertEquals(direct, mixed.probabilityOf(n), 1e-12);
    }
    assertEquals(0.75 * 0.5 + 0.25 * 9, mixed.mean(), 1e-12);
  }

  private static CountDistribution manyParts(int parts, double scale) {
    CountMixture mixture = new CountMixture();
    for (int i = 0; i < parts; i++) {
      mixture.add(
          scale * (1 + i), new double[] {0.1 * (i + 1), 2}, new double[] {1.5, 0.4 + 0.1 * i});
    }
    return mixture.distribution();
  }

  // 64 parts fill what is set aside at first; 100 need more.
  @ParameterizedTest
  @ValueSource(ints = {3, 64, 100})
  void manyPartsOfTwoTermsAreTheirWeightedConvolutions(int parts) {
    CountDistribution mixed = manyParts(parts, 1);
    double all = parts * (parts + 1) / 2.0;
    for (int n = 0; n <= 24; n += 6) {
      double direct = 0;
      for (int i = 0; i < parts; i++) {
        for (int j = 0; j <= n; j++) {
          direct +=
              (1 + i)
                  / all
                  * Math.exp(NegativeBinomial.logPmf(j, 0.1 * (i + 1), 1.5))
                  * Math.exp(NegativeBinomial.logPmf(n - j, 2, 0.4 + 0.1 * i));
        }
      }
      assertEquals(direct, mixed.probabilityOf(n), 1e-12);
    }
  }

  @Test
  void sixtyFourPartsOfOneTermFitToo() {
    CountMixture mixture = new CountMixture();
    for (int i = 0; i < 64; i++) {
      mixture.add(1, new double[] {3}, new double[] {2});
    }
    assertEquals(
        Math.exp(NegativeBinomial.logPmf(4, 3, 2)), mixture.distribution().probabilityOf(4), 1e-13);
  }

  // The weights are relative, so that a common factor changes nothing.
  @ParameterizedTest
  @ValueSource(doubles = {1e-9, 1e9})
  void onlyRelativeWeightsCount(double scale) {
    CountDistribution one = manyParts(20, 1);
    CountDistribution other = manyParts(20, scale);
    assertEquals(one.cut(), other.cut());
    assertEquals(one.mean(), other.mean(), 1e-12);
    for (int n = 0; n < one.cut(); n++) {
      assertEquals(one.probabilityOf(n), other.probabilityOf(n), 1e-13);
    }
  }

  /** R 4.2.2: dpois(c(0, 150, 200, 250), 200), dpois(700, 700). */
  @Test
  void nearAndFarPartsDoNotDisturbEachOther() {
    CountMixture mixture = new CountMixture();
    mixture.add(1, new double[] {0.5, 0.5}, new double[] {1e12, 1e12});
    mixture.add(1, new double[] {50, 150}, new double[] {1e12, 1e12});
    mixture.add(1, new double[] {300, 400}, new double[] {1e12, 1e12});
    mixture.add(1, new double[] {350, 350}, new double[] {1e12, 1e12});
    CountDistribution mixed = mixture.distribution();
    assertEquals(Math.exp(-1) / 4, mixed.probabilityOf(0), 1e-12);
    assertEquals(3.45708102201e-05 / 4, mixed.probabilityOf(150), 1e-13);
    assertEquals(0.0281977276859 / 4, mixed.probabilityOf(200), 1e-11);
    assertEquals(7.74490580013e-05 / 4, mixed.probabilityOf(250), 1e-13);
    assertEquals(0.0150768059127 / 2, mixed.probabilityOf(700), 1e-9);
    assertEquals(0.5, mixed.atMost(400), 1e-10);
  }

  @Test
  void nothingMixedIsNothingLost() {
    CountDistribution none = new CountMixture().distribution();
    assertEquals(0, none.mean());
    assertEquals(1, none.probabilityOf(0));
  }
}
