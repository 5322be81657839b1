package sparewell.rates.fit;

import java.util.List;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.CountMixture;

/**
 * Some use of a style ahead under a fit, and what is lost on it.
 *
 * <p>At each draw of the hyperparameters, expected losses are rate &times; effective hours, the
 * hours times their covers' multipliers; so the weights of the log rate, moved by ln(hours), are
 * those of the log of expected losses. These are added up over draws of like size (twelve groups; a
 * size differs from its group's by a few percent, which changes a chance by about 1e-4), and walk
 * on to the trips in question. Losses are then a mixture of negative binomials over (expected
 * losses, group).
 */
final class Stretch {
  private static final double LEAST = 1e-7; // weight of a part that counts
  private static final double TAIL = 1e-8; // of counts that is left out

  // Few draws are themselves right to a hundredth: what is left out then may be more.
  private static final int FEW_DRAWS = 48;
  private static final double ROUGH_LEAST = 1e-4;
  private static final double ROUGH_TAIL = 1e-4;
  private static final int EDGE = 3; // points beyond the ends, for interpolation

  private final RateFit fit;
  private final int style;
  private final List<RateFit.Term> terms;
  private final double step;
  private final double[] walk; // chances of so many points up or down
  private final int[] shift; // of each draw, ln of effective hours in steps of the grid
  private final double[] part; // and the part of a step beyond
  private final double[][] share; // by group, then term: of the effective hours
  private final int least;
  private final int most;

  /**
   * Prepares.
   *
   * @param terms with hours, at least one
   * @param scale what each term's losses are multiplied with, from 0 to 1
   */
  Stretch(RateFit fit, int style, List<RateFit.Term> terms, double[] scale) {
    this.fit = fit;
    this.style = style;
    this.terms = terms;
    step = fit.data().styles[style].step;
    double variance = fit.walk().variance(style, RateFit.stepsBeyond(terms));
    walk = RandomWalk.chances(variance, step);
    List<HyperPosterior.Draw> draws = fit.draws();
    shift = new int[draws.size()];
    part = new double[shift.length];
    share = new double[fit.groups().count()][terms.size()];
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    for (int d = 0; d < shift.length; d++) {
      HyperPosterior.Draw draw = draws.get(d);
      double[] hours = new double[terms.size()];
      double all = 0;
      for (int e = 0; e < hours.length; e++) {
        hours[e] = scale[e] * terms.get(e).hours() * draw.multiplier(terms.get(e).cover());
        all += hours[e];
      }
      double place = Math.log(Math.max(all, 1e-300)) / step;
      shift[d] = (int) Math.floor(place);
      part[d] = place - shift[d];
      low = Math.min(low, shift[d]);
      high = Math.max(high, shift[d]);
      int group = fit.groups().of(d);
      for (int e = 0; e < hours.length; e++) {
        share[group][e] += draw.weight() / fit.groups().weight(group) * hours[e] / all;
      }
    }
    least = low;
    most = high;
  }

  /** Number on the grid of the first point of {@link #weights}. */
  private int first() {
    return fit.data().styles[style].first + least - EDGE - walk.length / 2;
  }

  /** Number of points before the walk. */
  private int count() {
    return fit.data().styles[style].count + most - least + 2 * EDGE;
  }

  /** Weights of ln(expected losses) on the grid, by group. */
  private double[][] weights() {
    StyleData data = fit.data().styles[style];
    double[][] weights = new double[share.length][count()];
    double[][] rows = fit.rows(style);
    for (int d = 0; d < rows.length; d++) {
      double weight = fit.draws().get(d).weight();
      if (weight < LEAST) {
        continue;
      }
      double[] out = weights[fit.groups().of(d)];
      double[] wide = new double[data.count + 10];
      System.arraycopy(rows[d], 0, wide, 5, data.count);
      // The first point stands for all lower rates as well: what a smooth curve would not have
      // there is moved on its own.
      double smooth = wide[7] > 0 ? Math.min(wide[5], wide[6] * wide[6] / wide[7]) : wide[5];
      int at = shift[d] - least + EDGE;
      out[at] += weight * (wide[5] - smooth);
      wide[5] = smooth;
      Between.add(wide, Between.weights(1 - part[d]), weight, out, at - 2);
    }
    for (int g = 0; g < weights.length; g++) {
      double sum = 0;
      for (int k = 0; k < weights[g].length; k++) {
        weights[g][k] = Math.max(0, weights[g][k]);
        sum += weights[g][k];
      }
      for (int k = 0; k < weights[g].length && sum > 0; k++) {
        weights[g][k] *= fit.groups().weight(g) / sum;
      }
      weights[g] = RandomWalk.forward(weights[g], walk);
    }
    return weights;
  }

  /** Pieces lost over all of it. */
  static CountDistribution losses(List<Stretch> alternatives, double[] chances) {
    boolean rough = alternatives.get(0).fit.draws().size() < FEW_DRAWS;
    CountMixture mixture = new CountMixture(rough ? ROUGH_TAIL : TAIL);
    for (int a = 0; a < chances.length; a++) {
      Stretch one = alternatives.get(a);
      double[][] weights = one.weights();
      for (int g = 0; g < weights.length; g++) {
        double[] sizes = one.sizes(g);
        for (int k = 0; k < weights[g].length; k++) {
          double chance = chances[a] * weights[g][k];
          if (chance > (rough ? ROUGH_LEAST : LEAST)) {
            mixture.add(chance, one.means(g, k), sizes);
          }
        }
      }
    }
    return mixture.distribution();
  }

  private double expected(int k) {
    return Math.exp((first() + k) * step);
  }

  /** Expected losses of each term. */
  private double[] means(int group, int k) {
    double[] means = share[group].clone();
    double all = expected(k);
    for (int e = 0; e < means.length; e++) {
      means[e] *= all;
    }
    return means;
  }

  private double[] sizes(int group) {
    double size = fit.groups().size(group);
    return terms.stream().mapToDouble(term -> size * term.days()).toArray();
  }

  /** A function of expected losses by term and sizes by term. */
  interface Given {
    double of(double[] means, double[] sizes);
  }

  /**
   * Expectation of a function of the losses to be expected, at each draw and point of the rate over
   * the log.
   */
  double[][] expectation(Given function) {
    StyleData data = fit.data().styles[style];
    double[][] table = new double[share.length][];
    for (int g = 0; g < table.length; g++) {
      double[] sizes = sizes(g);
      double[] after = new double[count() + walk.length - 1];
      for (int k = 0; k < after.length && fit.groups().weight(g) > 0; k++) {
        after[k] = function.of(means(g, k), sizes);
      }
      table[g] = RandomWalk.backward(after, walk);
    }
    double[][] at = new double[shift.length][data.count];
    for (int d = 0; d < at.length; d++) {
      int from = shift[d] - least + EDGE - 2;
      double[] near = new double[data.count + 5];
      System.arraycopy(table[fit.groups().of(d)], from, near, 0, near.length);
      Between.add(near, Between.weights(part[d]), 1, at[d], 0);
    }
    return at;
  }
}
