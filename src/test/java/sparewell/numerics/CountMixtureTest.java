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
    mixture.add(1, mean, size);
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
  void aFarTailOfLittleWeightCounts() {
    CountMixture mixture = new CountMixture();
    mixture.add(0.99, 10, 2);
    mixture.add(0.01, 60, 0.3);
    CountDistribution sum = mixture.distribution();
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
      assertTrue(sharp.cut() > Math.min(mean, CountMixture.MOST), "cut at " + sharp.cut());
    }
  }

  @Test
  void aPartOfNothingStandsBesideThousands() {
    CountMixture mixture = new CountMixture();
    mixture.add(0.5, 0, 1);
    mixture.add(0.5, 5_000, 1e9);
    CountDistribution both = mixture.distribution();
    assertEquals(2_500, both.mean(), 1e-9);
    assertEquals(0.5, both.atMost(2_500), 1e-9);
  }

  /** R 4.2.2: pnbinom(size = 0.5, mu = 2000), pnbinom(size = 0.01, mu = 100), ppois(5000). */
  @ParameterizedTest
  @CsvSource({
    "2000, 0.5, 500, 0.383166857996741",
    "2000, 0.5, 1000, 0.520637147408822",
    "2000, 0.5, 3000, 0.779357484559940",
    "100, 0.01, 1999, 0.987781998744532",
    "5000, 1e12, 4900, 0.079346097957060",
    "5000, 1e12, 5000, 0.503761167770847",
    "5000, 1e12, 5100, 0.922037665459379"
  })
  void largeCountsAgreeWithR(double mean, double size, int n, double atMost) {
    CountDistribution large = one(mean, size);
    assertEquals(mean, large.mean(), 1e-9 * mean);
    assertEquals(atMost, large.atMost(n), 1e-9);
  }

  /** R 4.2.2: pnbinom(9999, size = 2, mu = 20000). */
  @Test
  void countsBeyondTheMostStandThere() {
    CountDistribution large = one(20_000, 2);
    assertEquals(0.264241117350581, large.atMost(CountMixture.MOST - 1), 1e-9);
    assertEquals(1, large.atMost(CountMixture.MOST), 1e-9);
    assertEquals(CountMixture.MOST, large.quantile(0.95));
    assertEquals(20_000, large.mean(), 1e-9);
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
    "8000, 0.0891238868088"
  })
  void mixturesOfSmallAndLargeAgreeWithR(int n, double above) {
    CountMixture mixture = new CountMixture();
    mixture.add(0.3, 3, 1.5);
    mixture.add(0.5, 300, 0.7);
    mixture.add(0.2, 8000, 6);
    CountDistribution mixed = mixture.distribution();
    assertEquals(above, mixed.above(n), 1e-9);
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
    mixture.add(0.75, 0.5, 2);
    mixture.add(0.25, 9, 0.7);
    mixture.add(0, 40, 3); // of no weight
    CountDistribution mixed = mixture.distribution();
    for (int n = 0; n < 50; n++) {
      double direct =
          0.75 * Math.exp(NegativeBinomial.logPmf(n, 0.5, 2))
              + 0.25 * Math.exp(NegativeBinomial.logPmf(n, 9, 0.7));
      assertEquals(direct, mixed.probabilityOf(n), 1e-12);
    }
    assertEquals(0.75 * 0.5 + 0.25 * 9, mixed.mean(), 1e-12);
  }

  /** R 4.2.2: dpois(c(0, 150, 200, 250), 200), dpois(700, 700). */
  @Test
  void nearAndFarPartsDoNotDisturbEachOther() {
    CountMixture mixture = new CountMixture();
    mixture.add(0.25, 1, 1e12);
    mixture.add(0.25, 200, 1e12);
    mixture.add(0.25, 700, 1e12);
    mixture.add(0.25, 700, 1e12);
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
