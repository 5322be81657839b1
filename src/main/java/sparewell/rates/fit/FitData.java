package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sparewell.numerics.NegativeBinomial;

/**
 * The input of a fit laid out on one grid: all log rates, of styles and of families, are multiples
 * of one step; those of a style lie so close that the trapezoidal rule is right to 1e-6 at any
 * hyperparameters in question.
 *
 * @see "Trefethen &amp; Weideman, The exponentially convergent trapezoidal rule, SIAM Review 56
 *     (2014)"
 */
final class FitData {
  /** Step of the grid, in log rate; each style has its own multiple of it. */
  static final double STEP = 0.02;

  /** How far from all rates seen a family's mean may lie, in log rate. */
  private static final double REACH = 6;

  /** Widest step of a style in use. */
  final double widest;

  final StyleData[] styles;

  /** Numbers of the styles with a log, by family. */
  final List<List<Integer>> logged;

  /** Least and largest number on the grid of a family's mean. */
  final int low;

  final int high;

  /** Share of hours in each category of cover. */
  final double[] mix;

  /**
   * ln of the rate of all styles together, drawn to the prior where little is logged; beside other
   * logs, of what it is against theirs.
   */
  final double typical;

  private final Map<Loss, Double> losses = // how often seen
      new TreeMap<>(Comparator.comparingInt(Loss::count).thenComparingDouble(Loss::days));

  private record Loss(int count, double days) {}

  final Hyperprior prior;

  final Beliefs others;

  final List<Integer> familyOf;

  FitData(FitInput input, Hyperprior prior, Beliefs others) {
    this.prior = prior;
    this.others = others;
    familyOf = input.familyOfStyle();
    List<List<Observation>> trips = new ArrayList<>();
    for (int s = 0; s < input.styles(); s++) {
      trips.add(new ArrayList<>());
    }
    double lost = 0.5;
    double hours = 0.5 / Math.exp(prior.logRateCentre());
    for (Observation one : input.observations()) {
      trips.get(one.style()).add(one);
      if (one.lostPieces() > 0 || !one.atLeast()) {
        lost += one.weight() * one.lostPieces();
        double beside = others.familyCentre(familyOf.get(one.style()));
        hours += one.weight() * one.hours() * Math.exp(beside);
      }
      if (one.lostPieces() > 0 && !one.atLeast()) {
        losses.merge(new Loss(one.lostPieces(), one.days()), one.weight(), Double::sum);
      }
    }
    mix = others.known() ? input.mixLogged() : input.mix();
    typical = Math.log(lost / hours);
    logged = new ArrayList<>();
    for (int f = 0; f < input.families(); f++) {
      logged.add(new ArrayList<>());
    }
    styles = new StyleData[trips.size()];
    double least = Math.min(typical, prior.logRateCentre()) - REACH;
    double largest = Math.max(typical, prior.logRateCentre()) + REACH;
    for (int s = 0; s < styles.length; s++) {
      double here = typical + others.familyCentre(familyOf.get(s));
      styles[s] = StyleData.of(trips.get(s), here);
      if (!styles[s].empty()) {
        logged.get(familyOf.get(s)).add(s);
      }
      least = Math.min(least, Math.min(styles[s].first * styles[s].step, here - REACH));
      double last = (styles[s].first + styles[s].count) * styles[s].step;
      largest = Math.max(largest, Math.max(last, here + REACH));
    }
    widest = Arrays.stream(styles).mapToDouble(style -> style.step).max().orElse(STEP);
    low = (int) Math.floor(least / STEP);
    high = (int) Math.ceil(largest / STEP);
  }

  /** Where to look for the common rate first, in prior standard deviations. */
  double startOfRate() {
    if (others.known()) {
      return 0;
    }
    return Math.max(-4, Math.min(4, (typical - prior.logRateCentre()) / prior.logRateSpread()));
  }

  /**
   * The part of the log-likelihood of all losses that depends on the size alone.
   *
   * @param size of the negative binomial for one day
   */
  double logCoefficients(double size) {
    double sum = 0;
    for (Map.Entry<Loss, Double> loss : losses.entrySet()) {
      double sizeOfAll = size * loss.getKey().days();
      sum += loss.getValue() * NegativeBinomial.logCoefficient(loss.getKey().count(), sizeOfAll);
    }
    return sum;
  }
}
