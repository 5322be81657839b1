package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.List;

/**
 * Some use of a style ahead under a fit, and what is expected to be lost on it.
 *
 * <p>At each draw of the hyperparameters, expected losses are rate &times; effective hours, the
 * hours times their covers' multipliers. Points of the rate at all draws of like size of the
 * negative binomial are pooled in cells as wide as a step of the grid in ln of expected losses,
 * whose means are exact; what pooling takes from the variance is given back in the walk to the
 * trips in question. Losses are then a mixture of negative binomials over the cells: a chance is
 * right to about 1e-4.
 */
final class Stretch {
  private final RateFit fit;
  private final StyleData data;
  private final double[][] rows;
  private final List<RateFit.Term> terms;
  private final int[] covers; // that occur
  private final double[] hours; // by cover
  private final double variance; // of the walk
  private final int[] shift; // of each draw, ln of effective hours in steps of the grid
  private final int least;
  private final int most;

  /**
   * Prepares.
   *
   * @param terms with hours, at least one
   */
  Stretch(RateFit fit, int style, List<RateFit.Term> terms) {
    this.fit = fit;
    this.terms = terms;
    data = fit.data().styles[style];
    rows = fit.rows(style);
    variance = fit.walk().variance(style, RateFit.stepsBeyond(terms));
    covers = terms.stream().mapToInt(RateFit.Term::cover).distinct().toArray();
    hours = new double[covers.length];
    for (RateFit.Term term : terms) {
      hours[place(term)] += term.hours();
    }
    shift = new int[rows.length];
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    for (int d = 0; d < shift.length; d++) {
      shift[d] = (int) Math.floor(Math.log(effectiveHours(fit.draws().get(d))) / data.step);
      low = Math.min(low, shift[d]);
      high = Math.max(high, shift[d]);
    }
    least = low;
    most = high;
  }

  private int place(RateFit.Term term) {
    int u = 0;
    while (covers[u] != term.cover()) {
      u++;
    }
    return u;
  }

  private double effectiveHours(HyperPosterior.Draw draw) {
    double all = 0;
    for (int u = 0; u < covers.length; u++) {
      all += hours[u] * draw.multiplier(covers[u]);
    }
    return all;
  }

  /**
   * One negative binomial for each term, with a weight.
   *
   * @param weight those of all parts sum to 1
   * @param means expected losses of each term
   * @param sizes size for the days of each term
   */
  record Part(double weight, double[] means, double[] sizes) {}

  /**
   * What is lost, as a mixture.
   *
   * @param faint weight of a part that does not count
   */
  List<Part> parts(double faint) {
    SizeGroups groups = fit.groups();
    int count = data.count + most - least;
    double[][] weight = new double[groups.count()][count];
    double[][][] sum = new double[groups.count()][covers.length][count]; // of weighted rates
    double square = 0;
    for (int d = 0; d < rows.length; d++) {
      HyperPosterior.Draw draw = fit.draws().get(d);
      double[] row = rows[d];
      int at = shift[d] - least;
      double[] here = weight[groups.group()[d]];
      double rateSquare = 0;
      for (int i = 0; i < row.length; i++) {
        here[at + i] += draw.weight() * row[i];
        rateSquare += row[i] * data.rate[i] * data.rate[i];
      }
      for (int u = 0; u < covers.length; u++) {
        double[] its = sum[groups.group()[d]][u];
        double factor = draw.weight() * draw.multiplier(covers[u]);
        for (int i = 0; i < row.length; i++) {
          its[at + i] += factor * row[i] * data.rate[i];
        }
      }
      square += draw.weight() * rateSquare * effectiveHours(draw) * effectiveHours(draw);
    }
    double[] walk = RandomWalk.chances(variance + lost(weight, sum, square), data.step);
    double[] moved = new double[walk.length]; // what each is to a mean
    for (int j = 0; j < walk.length; j++) {
      moved[j] = walk[j] * Math.exp((j - walk.length / 2) * data.step);
    }
    List<Part> parts = new ArrayList<>();
    for (int g = 0; g < weight.length; g++) {
      double[] weights = RandomWalk.forward(weight[g], walk);
      double[][] rates = new double[covers.length][];
      for (int u = 0; u < rates.length; u++) {
        rates[u] = RandomWalk.forward(sum[g][u], moved);
      }
      double[] sizes = sizes(g);
      for (int k = 0; k < weights.length; k++) {
        if (weights[k] > faint) {
          double[] means = new double[sizes.length];
          for (int e = 0; e < means.length; e++) {
            means[e] = terms.get(e).hours() * rates[place(terms.get(e))][k] / weights[k];
          }
          parts.add(new Part(weights[k], means, sizes));
        }
      }
    }
    return parts;
  }

  /** Variance of ln of expected losses that lies within cells. */
  private double lost(double[][] weight, double[][][] sum, double square) {
    double pooled = 0;
    for (int g = 0; g < weight.length; g++) {
      for (int k = 0; k < weight[g].length; k++) {
        double mean = 0;
        for (int u = 0; u < covers.length; u++) {
          mean += hours[u] * sum[g][u][k];
        }
        pooled += weight[g][k] > 0 ? mean * mean / weight[g][k] : 0;
      }
    }
    return Math.max(0, Math.log(square / pooled));
  }

  private double[] sizes(int group) {
    double size = fit.groups().size()[group];
    return terms.stream().mapToDouble(term -> size * term.days()).toArray();
  }
}
