package sparewell.experience;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RandomEffectsTest {
  /**
   * BCG vaccine against tuberculosis, 13 trials, log risk ratios: data set dat.bcg of R's metafor,
   * after Colditz et al., JAMA 271 (1994) 698-702. R 4.2.2, metafor 3.8.1: escalc(measure="RR",
   * ai=tpos, bi=tneg, ci=cpos, di=cneg, data=dat.bcg).
   */
  private static final List<RandomEffects.Study> BCG =
      studies(
          new double[] {
            -0.8893113339202, -1.5853886572014, -1.3480731482997, -1.4415511900213,
                -0.2175473222113,
            -0.7861155858189, -1.6208982235984, 0.0119523335238, -0.4694176487381, -1.3713448034728,
            -0.3393588283384, 0.4459134005714, -0.0173139482169
          },
          new double[] {
            0.32558476500396, 0.19458112139814, 0.41536796536797, 0.02001003190225,
                0.05121017216963,
            0.00690561845591, 0.22301724757232, 0.00396157929782, 0.05643421046325,
                0.07302479361303,
            0.01241221397156, 0.53250584520015, 0.07140465968399
          });

  private static List<RandomEffects.Study> studies(double[] estimates, double[] variances) {
    return IntStream.range(0, estimates.length)
        .mapToObj(i -> new RandomEffects.Study(estimates[i], variances[i], 1))
        .toList();
  }

  private static double restricted(List<RandomEffects.Study> studies, double between) {
    return RandomEffects.given(studies, between, new RandomEffects.Before(1, 0, 0)).logLikelihood();
  }

  /** Maximum of the restricted likelihood. */
  private static double reml(List<RandomEffects.Study> studies) {
    double low = 0;
    double high = 5;
    for (int i = 0; i < 100; i++) {
      double third = (high - low) / 3;
      if (restricted(studies, low + third) < restricted(studies, high - third)) {
        low += third;
      } else {
        high -= third;
      }
    }
    return low;
  }

  // R 4.2.2, metafor 3.8.1: logLik(rma(yi, vi, data=dat, method="REML", tau2=square)); a constant
  // of the log likelihoods is left out, so that their differences from the first are compared.
  @ParameterizedTest
  @CsvSource(
      useHeadersInDisplayName = true,
      textBlock =
          """
          square,   logLikelihood
          0.1,      -14.7383104588
          0.313243, -12.2023714155
          0.6,      -12.8841639542
          1,        -14.2380106328""")
  void restrictedLikelihoodIsThatOfMetafor(double square, double logLikelihood) {
    double none = restricted(BCG, 0);
    assertEquals(logLikelihood + 71.2286408198, restricted(BCG, Math.sqrt(square)) - none, 1e-8);
  }

  @Test
  void itsPeakIsTheEstimateThatMetaforPrints() {
    // rma(yi, vi, data=dat): tau^2 0.3132 (SE = 0.1664), as in the package's manual page of rma.
    assertEquals(0.3132433260, Math.pow(reml(BCG), 2), 1e-6);
  }

  @Test
  void posteriorUnderAHalfNormalPriorIsThatOfDirectIntegration() {
    // R 4.2.2, sums over 40,001 values of tau up to 8 scales (half-normal 0.5, flat mean).
    RandomEffects all = RandomEffects.of(BCG, new RandomEffects.Before(0.5, 0, 0));
    assertEquals(0.57190967, all.between(), 2e-5);
    assertEquals(0.51900026, all.likeliestBetween(), 0.006); // optimize() in R; steps of 0.01
    assertEquals(0.14300495, Math.sqrt(all.betweenVariance()), 2e-5);
    assertEquals(-0.71186001, all.mean(), 1e-6);
    assertEquals(0.18732706, Math.sqrt(all.meanVariance()), 1e-5);
    assertEquals(0.61856488, Math.sqrt(all.newVariance()), 2e-5);
  }

  /**
   * The worked example of a meta-analytic-predictive prior with a normal outcome: change of an
   * index of Crohn's disease in six placebo groups (Hueber et al., Gut 61 (2012) 1693-1700, as data
   * set crohn of R's RBesT), patients' standard deviation 88, half-normal prior of scale 44, mean
   * N(0, 88&sup2;). The figures are by direct integration in R 4.2.2 as above.
   */
  @Test
  void predictivePriorOfThePublishedExampleIsWorthTwentyPatients() {
    double[] patients = {74, 166, 328, 20, 25, 58};
    double[] change = {-51, -49, -36, -47, -90, -54};
    double[] variance = new double[6];
    for (int i = 0; i < 6; i++) {
      variance[i] = 88 * 88 / patients[i];
    }
    RandomEffects all =
        RandomEffects.of(
            studies(change, variance), new RandomEffects.Before(44, 0, 1.0 / (88 * 88)));
    assertEquals(-49.81840229, all.mean(), 1e-3);
    assertEquals(14.42336812, all.between(), 2e-3);
    assertEquals(19.42113933, Math.sqrt(all.newVariance()), 2e-3);
    // Neuenschwander et al. (2010): variance of one unit over that of the prior.
    assertEquals(20.53, 88 * 88 / all.newVariance(), 0.01);
  }

  @Test
  void twoGroupsAreInClosedForm() {
    // Equal variances v: s^2 = (y1 - y2)^2 / 2 is v + tau^2 without bias.
    List<RandomEffects.Study> two = studies(new double[] {1, 3}, new double[] {0.5, 0.5});
    assertEquals(Math.sqrt(2 - 0.5), reml(two), 1e-6);
    List<RandomEffects.Study> alike = studies(new double[] {1, 1.2}, new double[] {0.5, 0.5});
    assertEquals(0, reml(alike), 1e-6);
  }

  @Test
  void manyLogsThatSayTheSameAreTheirNumber() {
    List<RandomEffects.Study> one = List.of(new RandomEffects.Study(0.4, 0.3, 3));
    List<RandomEffects.Study> three = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      three.add(new RandomEffects.Study(0.4, 0.3, 1));
    }
    RandomEffects.Before before = new RandomEffects.Before(0.5, 0, 1);
    assertEquals(
        RandomEffects.of(three, before).newVariance(),
        RandomEffects.of(one, before).newVariance(),
        1e-12);
  }

  /**
   * Largest share that one of some logs has in the mean at a given spread between them, where the
   * others have at least a precision.
   */
  static double largestShare(int logs, double between, double leastOther) {
    double square = between * between;
    double ratio = (Entry.LEAST_VARIANCE + square) / (1 / leastOther + square);
    return 1 / (1 + (logs - 1) * ratio);
  }
}
