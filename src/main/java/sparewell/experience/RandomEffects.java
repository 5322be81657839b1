package sparewell.experience;

import java.util.List;

/**
 * Random-effects meta-analysis of normal estimates: y<sub>i</sub> ~ N(&theta;<sub>i</sub>,
 * v<sub>i</sub>), &theta;<sub>i</sub> ~ N(&mu;, &tau;&sup2;), with &tau; half-normal and &mu;
 * normal or flat. &mu; is integrated in closed form, &tau; on a grid of 240 steps, so the
 * prediction for a further angler, &theta;<sub>new</sub>, is a mixture of normals.
 *
 * @param mean posterior mean of &mu;, and of &theta;<sub>new</sub>
 * @param meanVariance posterior variance of &mu;
 * @param between posterior mean of &tau;
 * @param likeliestBetween where the posterior of &tau; peaks: 0 where few studies tell nothing of
 *     it
 * @param betweenVariance posterior variance of &tau;
 * @param newVariance variance of &theta;<sub>new</sub>
 * @see "Higgins, Thompson, Spiegelhalter, A re-evaluation of random-effects meta-analysis, JRSS A
 *     172 (2009); Neuenschwander et al., Summarizing historical information on controls in clinical
 *     trials, Clinical Trials 7 (2010) 5-18 (both from memory)"
 */
public record RandomEffects(
    double mean,
    double meanVariance,
    double between,
    double likeliestBetween,
    double betweenVariance,
    double newVariance) {
  private static final int GRID = 240;
  private static final double REACH = 5; // scales of the half-normal prior

  /**
   * An estimate of one or more logs.
   *
   * @param estimate y
   * @param variance v, &gt; 0
   * @param times number of logs with this estimate
   */
  public record Study(double estimate, double variance, double times) {}

  /**
   * Prior of the mean and of the spread between logs.
   *
   * @param betweenScale standard deviation of the normal distribution of which |&tau;| is half
   * @param precision one over the variance of &mu;; 0 where nothing is known
   */
  public record Before(double betweenScale, double mean, double precision) {}

  /** What one &tau; gives: ln of its likelihood, up to a constant, and the normal &mu;. */
  record Given(double logLikelihood, double mean, double variance) {}

  static Given given(List<Study> studies, double between, Before before) {
    double weights = before.precision();
    double product = before.precision() * before.mean();
    double log = 0;
    for (Study study : studies) {
      double weight = 1 / (study.variance() + between * between);
      weights += study.times() * weight;
      product += study.times() * weight * study.estimate();
      log += study.times() * Math.log(weight) / 2;
    }
    double mean = product / weights;
    double away = before.mean() - mean;
    log -= before.precision() * away * away / 2;
    for (Study study : studies) {
      double error = study.estimate() - mean;
      double weight = 1 / (study.variance() + between * between);
      log -= study.times() * weight * error * error / 2;
    }
    return new Given(log - Math.log(weights) / 2, mean, 1 / weights);
  }

  /** Combines at least one estimate. */
  public static RandomEffects of(List<Study> studies, Before before) {
    double step = REACH * before.betweenScale() / GRID;
    Given[] given = new Given[GRID + 1];
    double best = Double.NEGATIVE_INFINITY;
    double likeliest = 0;
    for (int i = 0; i <= GRID; i++) {
      given[i] = given(studies, i * step, before);
      double weight = logWeight(given[i], i * step, before);
      likeliest = weight > best ? i * step : likeliest;
      best = Math.max(best, weight);
    }
    double sum = 0;
    double[] moment = new double[5];
    for (int i = 0; i <= GRID; i++) {
      double tau = i * step;
      double end = i == 0 || i == GRID ? 0.5 : 1; // trapezoidal rule
      double weight = end * Math.exp(logWeight(given[i], tau, before) - best);
      double mean = given[i].mean();
      sum += weight;
      moment[0] += weight * mean;
      moment[1] += weight * mean * mean;
      moment[2] += weight * given[i].variance();
      moment[3] += weight * tau;
      moment[4] += weight * tau * tau;
    }
    for (int k = 0; k < moment.length; k++) {
      moment[k] /= sum;
    }
    double meanVariance = moment[2] + moment[1] - moment[0] * moment[0];
    return new RandomEffects(
        moment[0],
        meanVariance,
        moment[3],
        likeliest,
        moment[4] - moment[3] * moment[3],
        meanVariance + moment[4]);
  }

  private static double logWeight(Given given, double tau, Before before) {
    double z = tau / before.betweenScale();
    return given.logLikelihood() - z * z / 2;
  }
}
