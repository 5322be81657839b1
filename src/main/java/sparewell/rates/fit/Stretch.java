package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sparewell.numerics.CountMixture;

/**
 * Some use of a style ahead under a fit, and what is expected to be lost on it.
 *
 * <p>At each draw of the hyperparameters, expected losses are rate &times; effective hours, the
 * hours times their covers' multipliers. Points of the rate at all draws of like size of the
 * negative binomial are pooled in cells as wide as a step of the grid in ln of expected losses,
 * whose means are exact; what pooling takes from the variance is given back in the walk to the
 * trips in question. Losses are then a mixture of negative binomials over the cells, each with the
 * mean and the variance of the sum over the terms: a chance is right to about 1e-4, and of one term
 * that sum is a negative binomial.
 */
final class Stretch {
  private static final double WIDTH = 0.4; // of draws of like size, in ln of it
  private static final double WIDE = 1.2; // the same of few draws

  private final List<RateFit.Term> terms;
  private final List<Cell> cells = new ArrayList<>();

  /**
   * Much the same rate and size.
   *
   * @param weight those of all cells sum to 1
   * @param means expected losses, by term
   * @param size for one day
   */
  private record Cell(double weight, double[] means, double size) {}

  /**
   * Works it out.
   *
   * @param terms with hours, at least one
   * @param faint weight of a cell that does not count
   */
  Stretch(RateFit fit, int style, List<RateFit.Term> terms, double faint) {
    this.terms = terms;
    StyleData data = fit.data().styles[style];
    List<HyperPosterior.Draw> draws = fit.draws();
    double[] hours = draws.stream().mapToDouble(this::effectiveHours).toArray();
    int[] shift =
        Arrays.stream(hours).mapToInt(all -> (int) Math.floor(Math.log(all) / data.step)).toArray();
    int least = Arrays.stream(shift).min().getAsInt();
    int count = data.count + Arrays.stream(shift).max().getAsInt() - least;
    int[] group = groups(draws);
    int groups = Arrays.stream(group).max().getAsInt() + 1;
    double[][] weight = new double[groups][count];
    double[][][] sum = new double[groups][terms.size()][count]; // of weighted means
    double[] inGroup = new double[groups];
    double[] overSize = new double[groups];
    double square = 0;
    for (int d = 0; d < hours.length; d++) {
      HyperPosterior.Draw draw = draws.get(d);
      double[] row = fit.rows(style)[d];
      int g = group[d];
      int at = shift[d] - least;
      double rateSquare = 0;
      for (int i = 0; i < row.length; i++) {
        weight[g][at + i] += draw.weight() * row[i];
        rateSquare += row[i] * data.rate[i] * data.rate[i];
      }
      for (int e = 0; e < terms.size(); e++) {
        double factor = draw.weight() * effectiveHours(terms.get(e), draw);
        for (int i = 0; i < row.length; i++) {
          sum[g][e][at + i] += factor * row[i] * data.rate[i];
        }
      }
      inGroup[g] += draw.weight();
      overSize[g] += draw.weight() / draw.given().hyper().size();
      square += draw.weight() * rateSquare * hours[d] * hours[d];
    }
    double variance = fit.walk().variance(style, RateFit.stepsBeyond(terms));
    double[] walk = RandomWalk.chances(variance + lost(weight, sum, square), data.step);
    double[] moved = new double[walk.length]; // what each is to a mean
    for (int j = 0; j < walk.length; j++) {
      moved[j] = walk[j] * Math.exp((j - walk.length / 2) * data.step);
    }
    for (int g = 0; g < groups; g++) {
      double[] weights = RandomWalk.forward(weight[g], walk);
      double[][] means =
          Arrays.stream(sum[g])
              .map(each -> RandomWalk.forward(each, moved))
              .toArray(double[][]::new);
      for (int k = 0; k < weights.length; k++) {
        if (weights[k] > faint) {
          double[] its = new double[means.length];
          for (int e = 0; e < its.length; e++) {
            its[e] = means[e][k] / weights[k];
          }
          // The harmonic mean of sizes keeps variances right.
          cells.add(new Cell(weights[k], its, inGroup[g] / overSize[g]));
        }
      }
    }
  }

  private static double effectiveHours(RateFit.Term term, HyperPosterior.Draw draw) {
    return term.hours() * draw.multiplier(term.cover());
  }

  private double effectiveHours(HyperPosterior.Draw draw) {
    return terms.stream().mapToDouble(term -> effectiveHours(term, draw)).sum();
  }

  /** Number of each draw's group of like size. */
  private static int[] groups(List<HyperPosterior.Draw> draws) {
    double width = draws.size() < RateFit.FEW_DRAWS ? WIDE : WIDTH;
    double[] log = draws.stream().mapToDouble(d -> Math.log(d.given().hyper().size())).toArray();
    double least = Arrays.stream(log).min().getAsDouble();
    return Arrays.stream(log).mapToInt(one -> (int) ((one - least) / width)).toArray();
  }

  /** Variance of ln of expected losses that lies within cells. */
  private static double lost(double[][] weight, double[][][] sum, double square) {
    double pooled = 0;
    for (int g = 0; g < weight.length; g++) {
      for (int k = 0; k < weight[g].length; k++) {
        double mean = 0;
        for (double[] each : sum[g]) {
          mean += each[k];
        }
        pooled += weight[g][k] > 0 ? mean * mean / weight[g][k] : 0;
      }
    }
    return Math.max(0, Math.log(square / pooled));
  }

  /**
   * Adds the losses of what has a share in each term.
   *
   * @param share by term, in (0, 1]
   */
  void addTo(CountMixture mixture, double weight, double[] share) {
    for (Cell cell : cells) {
      double mean = 0;
      double extra = 0; // of one negative binomial with the mean and the variance of the sum
      for (int e = 0; e < share.length; e++) {
        double its = cell.means()[e] * share[e];
        mean += its;
        extra += its * its / terms.get(e).days();
      }
      mixture.add(weight * cell.weight(), mean, cell.size() * mean * mean / extra);
    }
  }
}
