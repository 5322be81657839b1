package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.reference.Reference;

class CountMixtureTest {
  private static CountDistribution one(double mean, double size) {
    CountMixture mixture = new CountMixture(1);
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
    CountMixture mixture = new CountMixture(2);
    mixture.add(1, new double[] {2, 3}, new double[] {1, 1.5});
    CountDistribution sum = mixture.distribution();
    for (int n = 0; n < 40; n++) {
      assertEquals(NegativeBinomial.pmf(n, 5, 2.5), sum.probabilityOf(n), 1e-13);
    }
  }

  @Test
  void sumsOfUnequalSharesAreConvolutions() {
    CountMixture mixture = new CountMixture(2);
    mixture.add(1, new double[] {0.4, 7}, new double[] {0.3, 12});
    CountDistribution sum = mixture.distribution();
    for (int n = 0; n < 60; n++) {
      double direct = 0;
      for (int j = 0; j <= n; j++) {
        direct += NegativeBinomial.pmf(j, 0.4, 0.3) * NegativeBinomial.pmf(n - j, 7, 12);
      }
      assertEquals(direct, sum.probabilityOf(n), n < sum.cut() ? 1e-13 : 1e-10);
    }
    assertEquals(7.4, sum.mean(), 1e-12);
  }

  @Test
  void hugeMeansDoNotUnderflow() {
    CountDistribution far = one(5_000, 4_000);
    double sd = Math.sqrt(5_000 + 5_000.0 * 5_000 / 4_000);
    assertEquals(NegativeBinomial.pmf(5_000, 5_000, 4_000), far.probabilityOf(5_000), 1e-9);
    assertEquals(0.5, far.atMost(5_000), 0.01);
    assertTrue(Math.abs(far.quantile(0.95) - (5_000 + 1.645 * sd)) < 0.1 * sd);
  }

  @Test
  void mixesItsParts() {
    CountMixture mixture = new CountMixture(1);
    mixture.add(3, new double[] {0.5}, new double[] {2});
    mixture.add(1, new double[] {9}, new double[] {0.7});
    CountDistribution mixed = mixture.distribution();
    for (int n = 0; n < 50; n++) {
      double direct =
          0.75 * NegativeBinomial.pmf(n, 0.5, 2) + 0.25 * NegativeBinomial.pmf(n, 9, 0.7);
      assertEquals(direct, mixed.probabilityOf(n), 1e-12);
    }
    assertEquals(0.75 * 0.5 + 0.25 * 9, mixed.mean(), 1e-12);
  }

  private static CountDistribution manyParts(int parts, double scale) {
    CountMixture mixture = new CountMixture(2);
    for (int i = 0; i < parts; i++) {
      mixture.add(scale * (1 + i), new double[] {0.1 * i, 2}, new double[] {1.5, 0.4 + 0.1 * i});
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
                  * NegativeBinomial.pmf(j, 0.1 * i, 1.5)
                  * NegativeBinomial.pmf(n - j, 2, 0.4 + 0.1 * i);
        }
      }
      assertEquals(direct, mixed.probabilityOf(n), 1e-12);
    }
  }

  @Test
  void sixtyFourPartsOfOneTermFitToo() {
    CountMixture mixture = new CountMixture(1);
    for (int i = 0; i < 64; i++) {
      mixture.add(1, new double[] {3}, new double[] {2});
    }
    assertEquals(NegativeBinomial.pmf(4, 3, 2), mixture.distribution().probabilityOf(4), 1e-13);
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

  /** scipy 1.10.1: poisson.pmf((0, 150, 200, 250), 200), poisson.pmf(3000, 3000). */
  @Test
  void nearAndFarPartsDoNotDisturbEachOther() {
    CountMixture mixture = new CountMixture(2);
    mixture.add(1, new double[] {0.5, 0.5}, new double[] {1e12, 1e12});
    mixture.add(1, new double[] {50, 150}, new double[] {1e12, 1e12});
    mixture.add(1, new double[] {1000, 2000}, new double[] {1e12, 1e12});
    mixture.add(1, new double[] {1400, 1600}, new double[] {1e12, 1e12});
    CountDistribution mixed = mixture.distribution();
    assertEquals(Math.exp(-1) / 4, mixed.probabilityOf(0), 1e-12);
    assertEquals(3.45708102201e-05 / 4, mixed.probabilityOf(150), 1e-13);
    assertEquals(0.0281977276859 / 4, mixed.probabilityOf(200), 1e-11);
    assertEquals(7.74490580013e-05 / 4, mixed.probabilityOf(250), 1e-13);
    assertEquals(0.00728345388297 / 2, mixed.probabilityOf(3000), 1e-9);
    assertEquals(0.5, mixed.atMost(2000), 1e-10);
  }

  /** P(N > 20) of a Poisson count with mean 1 is 1e-20 and less: nothing to hold beyond. */
  @Test
  void aTailWithoutEndIsCutFarBeyondTheMean() {
    CountMixture mixture = new CountMixture(1);
    mixture.add(5, new double[] {100}, new double[] {0.01});
    CountDistribution heavy = mixture.distribution();
    assertEquals(20_000, heavy.cut());
    assertEquals(100, heavy.mean(), 1e-9);
    assertEquals(0.0122180, heavy.above(1999), 0.0005);
  }

  @Test
  void nothingMixedIsNothingLost() {
    CountDistribution none = new CountMixture(1).distribution();
    assertEquals(0, none.mean());
    assertEquals(1, none.probabilityOf(0));
  }
}
