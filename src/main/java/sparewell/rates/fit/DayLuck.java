package sparewell.rates.fit;

import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Luck of a day that all styles share: wind, water and fish move the losses of a trip up or down
 * alike.
 *
 * <p>The fit takes the styles of a trip as independent. What one style's own trips tell is right
 * all the same, since its extra variation holds the luck; what all of them tell together, the level
 * of the rates and the multipliers of covers, is known less well than the fit has it: the mean luck
 * of the trips in a cover, of variance v &Sigma; I&sup2; / (&Sigma; I)&sup2; with I what a trip
 * tells, is taken for the cover's. v has a prior; the log tells of it by how far the losses of all
 * styles of a trip together lie off, beside what the trips in its cover have in common (restricted
 * likelihood of a normal approximation around the fitted rates).
 *
 * @see "McCulloch and Searle, Generalized, Linear, and Mixed Models (2001), sec. 6.9 (restricted
 *     likelihood; from memory)"
 * @param common variance of the mean luck of all trips
 * @param byCover what that of a cover's trips has beyond
 */
record DayLuck(double common, double[] byCover) {
  private static final int GRID = 16; // points of ln v on either side of the centre
  private static final double REACH = 3; // prior standard deviations
  private static final double MOST = 4; // standard deviations that a trip's error counts for

  /** Trips that tell something: what they tell, how far they are off, in which cover. */
  record Trips(double[] information, double[] error, int[] cover) {}

  /** No luck. */
  static DayLuck none(FitData data) {
    return new DayLuck(0, new double[data.mix.length]);
  }

  /** Evidence of the log, given its fit without luck. */
  static DayLuck of(FitData data, Fitted fitted) {
    int covers = data.mix.length;
    if (data.prior.dayLuck().equals(Hyperprior.LogVariance.NONE)) {
      return none(data);
    }
    Trips trips = trips(data, fitted);
    double v = variance(trips, covers, data.prior.dayLuck());
    double common = v * concentration(trips, -1);
    double prior = data.prior.coverSpread() * data.prior.coverSpread();
    double[] byCover = new double[covers];
    for (int c = 0; c < covers; c++) {
      double sum = 0;
      for (int t = 0; t < trips.cover.length; t++) {
        sum += trips.cover[t] == c ? trips.information[t] : 0;
      }
      double learnt = prior * sum / (prior * sum + 1);
      byCover[c] = learnt * learnt * Math.max(0, v * concentration(trips, c) - common);
    }
    return new DayLuck(common, byCover);
  }

  private static Trips trips(FitData data, Fitted fitted) {
    int last = -1;
    for (StyleData style : data.styles) {
      for (Observation one : style.trips) {
        last = Math.max(last, one.trip());
      }
    }
    double[] information = new double[last + 1];
    double[] error = new double[last + 1];
    int[] cover = new int[last + 1];
    for (StyleData style : data.styles) {
      for (Observation one : style.trips) {
        if (!one.atLeast()) {
          double tells = one.weight() * fitted.information(one);
          information[one.trip()] += tells;
          error[one.trip()] += tells * (one.lostPieces() / fitted.expected(one) - 1);
          cover[one.trip()] = one.cover() < 0 ? data.mix.length : one.cover();
        }
      }
    }
    for (int t = 0; t <= last; t++) {
      double most = MOST / Math.sqrt(information[t]);
      error[t] = information[t] > 0 ? Math.min(most, error[t] / information[t]) : 0;
    }
    return new Trips(information, error, cover);
  }

  /** Sum of squares over the square of the sum of what trips tell, in a cover or (-1) in all. */
  private static double concentration(Trips trips, int cover) {
    double sum = 0;
    double squares = 0;
    for (int t = 0; t < trips.cover.length; t++) {
      if (cover < 0 || trips.cover[t] == cover) {
        sum += trips.information[t];
        squares += trips.information[t] * trips.information[t];
      }
    }
    return sum > 0 ? squares / (sum * sum) : 0;
  }

  /** Posterior mean of v. */
  static double variance(Trips trips, int covers, Hyperprior.LogVariance prior) {
    double[] v = new double[2 * GRID + 1];
    double[] log = new double[v.length];
    for (int i = 0; i < v.length; i++) {
      double z = REACH * (i - GRID) / GRID;
      v[i] = Math.exp(prior.logCentre() + prior.logSpread() * z);
      log[i] = logLikelihood(trips, covers, v[i]) - z * z / 2;
    }
    double best = Arrays.stream(log).max().getAsDouble();
    double sum = 0;
    double mean = 0;
    for (int i = 0; i < v.length; i++) {
      double weight = Math.exp(log[i] - best);
      sum += weight;
      mean += weight * v[i];
    }
    return mean / sum;
  }

  /** ln of the restricted likelihood: the level of each cover is unknown. */
  static double logLikelihood(Trips trips, int covers, double v) {
    double log = 0;
    double[] precision = new double[covers + 1];
    double[] level = new double[covers + 1];
    for (int t = 0; t < trips.cover.length; t++) {
      if (trips.information[t] > 0) {
        double spread = v + 1 / trips.information[t];
        double error = trips.error[t];
        log -= (Math.log(spread) + error * error / spread) / 2;
        precision[trips.cover[t]] += 1 / spread;
        level[trips.cover[t]] += error / spread;
      }
    }
    for (int c = 0; c <= covers; c++) {
      if (precision[c] > 0) {
        log -= (Math.log(precision[c]) - level[c] * level[c] / precision[c]) / 2;
      }
    }
    return log;
  }

  /** Variance of the log of expected losses over the terms together, each by its hours. */
  double variance(List<RateFit.Term> terms) {
    double hours = 0;
    double[] ofCover = new double[byCover.length];
    for (RateFit.Term term : terms) {
      hours += term.hours();
      if (term.cover() >= 0) {
        ofCover[term.cover()] += term.hours();
      }
    }
    double variance = common;
    for (int c = 0; c < byCover.length; c++) {
      double share = hours > 0 ? ofCover[c] / hours : 0;
      variance += share * share * byCover[c];
    }
    return variance;
  }

  /**
   * Factors by which expected losses are off, with mean 1.
   *
   * @return one for each cover, last that of the mix and of one never logged
   */
  double[] draw(RandomGenerator random) {
    double all = Math.sqrt(common) * random.nextGaussian() - common / 2;
    double[] factor = new double[byCover.length + 1];
    for (int c = 0; c < byCover.length; c++) {
      factor[c] = Math.exp(all + Math.sqrt(byCover[c]) * random.nextGaussian() - byCover[c] / 2);
    }
    factor[byCover.length] = Math.exp(all);
    return factor;
  }
}
