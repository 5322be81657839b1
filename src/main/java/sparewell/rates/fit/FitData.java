package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.List;

/** The input of a fit, laid out by style and family. */
final class FitData {
  private final List<List<Observation>> trips = new ArrayList<>(); // by style
  private final StyleHistory[] histories;
  private final int[][] stylesOf;
  private final int[] familyOf;
  private final double[] mix;
  private final double[][] reach;
  private final boolean rough;
  private final Beliefs others;
  private double lost;
  private double hours;
  private double amount;

  FitData(FitInput input) {
    this(input, false);
  }

  /**
   * Lays the input out.
   *
   * @param rough whether integrals need be right to 1e-4 only
   */
  FitData(FitInput input, boolean rough) {
    this(input, rough, Beliefs.NONE);
  }

  /**
   * Lays the input out.
   *
   * @param rough whether integrals need be right to 1e-4 only
   * @param others what other logs tell
   */
  FitData(FitInput input, boolean rough, Beliefs others) {
    this.rough = rough;
    this.others = others;
    int styles = input.styles();
    for (int s = 0; s < styles; s++) {
      trips.add(new ArrayList<>());
    }
    for (Observation observation : input.observations()) {
      trips.get(observation.style()).add(observation);
      amount += observation.weight();
      if (observation.lostPieces() > 0 || !observation.atLeast()) {
        lost += observation.weight() * observation.lostPieces();
        int family = input.familyOfStyle().get(observation.style());
        hours += observation.weight() * observation.hours() * Math.exp(others.familyCentre(family));
      }
    }
    histories = new StyleHistory[styles];
    List<List<Integer>> members = new ArrayList<>();
    for (int f = 0; f < input.families(); f++) {
      members.add(new ArrayList<>());
    }
    familyOf = new int[styles];
    for (int s = 0; s < styles; s++) {
      histories[s] = new StyleHistory(trips.get(s));
      familyOf[s] = input.familyOfStyle().get(s);
      members.get(familyOf[s]).add(s);
    }
    stylesOf = new int[input.families()][];
    for (int f = 0; f < stylesOf.length; f++) {
      stylesOf[f] = members.get(f).stream().mapToInt(Integer::intValue).toArray();
    }
    mix = others.known() ? input.mixLogged() : input.mix();
    reach = new double[input.families()][2];
    for (double[] range : reach) {
      range[0] = Double.NEGATIVE_INFINITY;
      range[1] = Double.POSITIVE_INFINITY;
    }
  }

  /** What other logs tell. */
  Beliefs others() {
    return others;
  }

  boolean rough() {
    return rough;
  }

  /** Trips of all styles, each by its weight. */
  double amount() {
    return amount;
  }

  /** Where to look for the common rate first: the rate of all styles together. */
  double startOfRate(Hyperprior prior) {
    double centre = prior.logRateCentre();
    double rate = (lost + 0.5) / (hours + 0.5 / Math.exp(centre));
    return (Math.log(rate) - centre) / prior.logRateSpread();
  }

  int styles() {
    return histories.length;
  }

  int families() {
    return stylesOf.length;
  }

  /** What was logged of a style. */
  List<Observation> trips(int style) {
    return trips.get(style);
  }

  StyleHistory history(int style) {
    return histories[style];
  }

  int[] stylesOf(int family) {
    return stylesOf[family];
  }

  int familyOf(int style) {
    return familyOf[style];
  }

  /** Share of hours in each category of cover. */
  double[] mix() {
    return mix;
  }

  /**
   * Range of the log mean rate of a family in which the last set of hyperparameters found weight: a
   * first guess for the next one, which need not be right, kept up by {@link RatePosterior}.
   */
  double[] reach(int family) {
    return reach[family];
  }
}
