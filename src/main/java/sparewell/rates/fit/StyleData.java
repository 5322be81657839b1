package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sparewell.numerics.NegativeBinomial;

/**
 * The trips of one style, and the stretch of the grid on which its log rate x lies.
 *
 * <p>A trip of h hours and d days with y lost, weight w, in a cover with multiplier m adds w [y (x
 * + ln m) - (y + &kappa; d) ln(1 + e<sup>u</sup> h/d)] to the log-likelihood, u = x +
 * ln(m/&kappa;). So all a cover's trips tell lies in two functions of u, &sum; w d ln(1 +
 * e<sup>u</sup> h/d) and &sum; w y ln(1 + e<sup>u</sup> h/d). They are tabulated once and read
 * between the points of the table by Lagrange's interpolation (right to 2e-6 of w (y + &kappa; d)
 * at the widest step), so that trying hyperparameters costs the same however many trips there are.
 */
final class StyleData {
  private static final double DEPTH = 12; // e^-12 of the peak is left out on either side
  private static final double ZERO = 0.005; // expected losses that are as good as none
  private static final double WIDEST = 0.16; // step
  // Where rates are known about as well as they can be
  private static final double LARGE_SHAPE = 8;
  private static final double LARGE_SIZE = 50;
  // Where likelihoods and families are about as wide as they can be
  private static final double SMALL_SIZE = 0.7;
  private static final double SMALL_SHAPE = 0.6;
  private static final double HIGH_MEAN = 1; // ln of a family's mean over the rates seen
  private static final double LEAST_SHIFT = -13.5; // of ln(m / size), as Hyper has them in range
  private static final double MOST_SHIFT = 9;

  /** Points of the grid from one of the style's to the next, and what that is in log rate. */
  final int by;

  final double step;

  /** Number of the first point, in steps of the style, and how many there are. */
  final int first;

  final int count;

  /** Rate at each point, pieces per hour. */
  final double[] rate;

  /** Pieces lost, each trip by its weight. */
  final double lost;

  final List<Observation> trips;
  private final double days;
  private final List<Observation> censored = new ArrayList<>();
  private final List<Table> tables = new ArrayList<>();

  /**
   * Trips of one cover. Of the tables only what is asked for is worked out: sizes and multipliers
   * in question are far fewer than those in range.
   *
   * @param trips those of equal hours a day: these hours, their days and their pieces
   */
  private record Table(
      int cover, int first, double pieces, double[][] trips, double[] byDays, double[] byPieces) {
    void fill(int k, double step) {
      double scale = Math.exp((first + k) * step);
      byDays[k] = 0;
      for (double[] trip : trips) {
        double log = Math.log1p(trip[0] * scale);
        byDays[k] += trip[1] * log;
        byPieces[k] += trip[2] * log;
      }
    }
  }

  private StyleData(List<Observation> trips, double step, int by, int first, int count) {
    this.trips = List.copyOf(trips);
    this.step = step;
    this.by = by;
    this.first = first;
    this.count = count;
    rate = new double[count];
    for (int i = 0; i < count; i++) {
      rate[i] = Math.exp((first + i) * step);
    }
    Map<Integer, List<Observation>> byCover = new TreeMap<>();
    double sum = 0;
    double time = 0;
    for (Observation one : trips) {
      sum += one.weight() * one.lostPieces();
      time += one.weight() * one.days();
      if (!one.atLeast()) {
        byCover.computeIfAbsent(one.cover(), cover -> new ArrayList<>()).add(one);
      } else if (one.lostPieces() > 0) {
        censored.add(one); // ran out with nothing lost: demand was 0 or more, which tells nothing
      }
    }
    lost = sum;
    days = time;
    byCover.forEach((cover, of) -> tables.add(table(cover, of)));
  }

  private Table table(int cover, List<Observation> of) {
    int length = count + (int) Math.ceil((MOST_SHIFT - LEAST_SHIFT) / step) + 8;
    double pieces = 0;
    Map<Double, double[]> byHours = new TreeMap<>();
    for (Observation one : of) {
      double hours = one.hours() / one.days();
      double[] sums = byHours.computeIfAbsent(hours, h -> new double[] {h, 0, 0});
      sums[1] += one.weight() * one.days();
      sums[2] += one.weight() * one.lostPieces();
      pieces += one.weight() * one.lostPieces();
    }
    double[] byDays = new double[length];
    Arrays.fill(byDays, Double.NaN);
    return new Table(
        cover,
        first + (int) Math.floor(LEAST_SHIFT / step) - 1,
        pieces,
        byHours.values().toArray(double[][]::new),
        byDays,
        new double[length]);
  }

  /**
   * Lays a style out.
   *
   * @param trips its trips
   * @param typical ln of the rate of all styles together
   */
  static StyleData of(List<Observation> trips, double typical) {
    double hours = 0;
    double lost = 0;
    double days = 0;
    for (Observation one : trips) {
      hours += one.weight() * one.hours();
      lost += one.weight() * one.lostPieces();
      days += one.weight() * one.days();
    }
    // 1.1 of the narrowest standard deviation: off by 2 exp(-2 pi^2 / 1.21), less than 2e-7.
    double narrow = 1.1 / Math.sqrt(LARGE_SHAPE + effectivePieces(lost, days, LARGE_SIZE));
    int by = Math.max(1, (int) (Math.min(narrow, WIDEST) / FitData.STEP));
    double step = by * FitData.STEP;
    double flat = Math.log(ZERO / (hours + Math.exp(-typical)));
    double own = lost > 0 ? Math.log(lost / hours) : typical;
    // Where the likelihood counts, if sizes are small; and the way from there to the other styles.
    double left = Math.min(own, typical) - 1;
    double right = Math.max(own, typical) + 1;
    double best = likely(trips, own);
    double high = right - 1 + HIGH_MEAN;
    while (left > flat && likely(trips, left) > best - DEPTH) {
      left -= 0.25;
    }
    while (likely(trips, right) - SMALL_SHAPE * Math.exp(right - high) > best - DEPTH) {
      right += 0.25;
    }
    int first = (int) Math.floor(left / step);
    return new StyleData(trips, step, by, first, (int) Math.ceil(right / step) - first + 1);
  }

  /** ln of the likelihood at a log rate, without covers and at a small size, up to a constant. */
  private static double likely(List<Observation> trips, double logRate) {
    double sum = 0;
    for (Observation one : trips) {
      double size = SMALL_SIZE * one.days();
      double log = Math.log1p(Math.exp(logRate) * one.hours() / size);
      sum +=
          one.atLeast()
              ? 0
              : one.weight() * (one.lostPieces() * logRate - (one.lostPieces() + size) * log);
    }
    return sum;
  }

  /**
   * Number of independent events that the pieces lost are worth: y losses of a negative binomial
   * tell no more than its size.
   */
  double effectivePieces(double size) {
    return effectivePieces(lost, days, size);
  }

  private static double effectivePieces(double lost, double days, double size) {
    return lost > 0 ? lost / (1 + lost / (size * days)) : 0;
  }

  /** Independent losses that the pieces lost are worth at a rate per hour and a draw. */
  double independent(double itsRate, HyperPosterior.Draw draw) {
    double sum = 0;
    for (Observation one : trips) {
      double expected = itsRate * one.hours() * draw.multiplier(one.cover());
      double size = draw.given().hyper().size() * one.days();
      sum += one.weight() * one.lostPieces() / (1 + expected / size);
    }
    return sum;
  }

  /** True if there is nothing to learn from. */
  boolean empty() {
    return tables.isEmpty() && censored.isEmpty();
  }

  /**
   * ln of the likelihood at each point, without what depends on the size alone.
   *
   * @param size &kappa;, for one day
   * @param multiplier of each cover
   */
  double[] logLikelihood(double size, double[] multiplier) {
    double[] out = new double[count];
    double[] mixed = new double[count + 3];
    double pieces = 0;
    double level = 0;
    for (Table table : tables) {
      double m = table.cover < 0 ? 1 : multiplier[table.cover];
      double shift = Math.max(LEAST_SHIFT, Math.min(MOST_SHIFT, Math.log(m / size))) / step;
      int whole = (int) Math.floor(shift);
      int from = first + whole - 1 - table.first;
      for (int k = 0; k < mixed.length; k++) {
        if (Double.isNaN(table.byDays[from + k])) {
          table.fill(from + k, step);
        }
        mixed[k] = size * table.byDays[from + k] + table.byPieces[from + k];
      }
      subtractBetween(mixed, shift - whole, out);
      pieces += table.pieces;
      level += table.pieces * Math.log(m);
    }
    for (int i = 0; i < count; i++) {
      out[i] += level + pieces * (first + i) * step;
    }
    for (Observation one : censored) {
      double m = one.cover() < 0 ? 1 : multiplier[one.cover()];
      for (int i = 0; i < count; i++) {
        double mean = rate[i] * one.hours() * m;
        out[i] +=
            one.weight() * NegativeBinomial.logAtLeast(one.lostPieces(), mean, size * one.days());
      }
    }
    return out;
  }

  /** Takes values at a place between the second and the third of four neighbours off others. */
  private static void subtractBetween(double[] values, double place, double[] from) {
    double w0 = -place * (place - 1) * (place - 2) / 6;
    double w1 = (place + 1) * (place - 1) * (place - 2) / 2;
    double w2 = -(place + 1) * place * (place - 2) / 2;
    double w3 = (place + 1) * place * (place - 1) / 6;
    for (int i = 0; i < from.length; i++) {
      from[i] -= w0 * values[i] + w1 * values[i + 1] + w2 * values[i + 2] + w3 * values[i + 3];
    }
  }
}
