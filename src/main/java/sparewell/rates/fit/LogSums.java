package sparewell.rates.fit;

import java.util.Arrays;
import java.util.List;

/**
 * What the trips of one style in one cover add to its likelihood, as sums that depend on the rate
 * alone: &sum; w d ln(1 + h/d e<sup>u</sup>) and &sum; w y ln(1 + h/d e<sup>u</sup>), u = ln(rate
 * &times; multiplier / size).
 *
 * <p>Both are kept on a lattice of u and interpolated by eight points. ln(1 + e<sup>u</sup>) is
 * analytic up to &plusmn;i&pi;, which bounds the error by 1e-9 for each unit of w d or w y, below
 * 1e-9 of the sum where u is small. So the cost of a likelihood does not depend on the number of
 * trips.
 */
final class LogSums {
  /** Distance of the lattice. */
  static final double STEP = RateNodes.WIDEST / 2;

  private static final int SLACK = 6;

  private final double[] hoursPerDay;
  private final double[] days;
  private final double[] pieces;
  private double allPieces;
  private double allHours;
  private int lowest = Integer.MAX_VALUE;
  private int highest = Integer.MIN_VALUE;
  private double[] byDays = new double[0];
  private double[] byPieces = new double[0];

  /**
   * Takes the trips in, those with as many hours a day together.
   *
   * @param trips not censored, in the order of their hours a day
   */
  LogSums(List<Observation> trips) {
    double[] h = new double[trips.size()];
    double[] d = new double[trips.size()];
    double[] y = new double[trips.size()];
    int n = 0;
    for (Observation trip : trips) {
      double perDay = trip.hours() / trip.days();
      if (n == 0 || Double.compare(h[n - 1], perDay) != 0) {
        h[n++] = perDay;
      }
      d[n - 1] += trip.weight() * trip.days();
      y[n - 1] += trip.weight() * trip.lostPieces();
      allPieces += trip.weight() * trip.lostPieces();
      allHours += trip.weight() * trip.hours();
    }
    hoursPerDay = Arrays.copyOf(h, n);
    days = Arrays.copyOf(d, n);
    pieces = Arrays.copyOf(y, n);
  }

  /** Pieces lost, each trip by its weight. */
  double pieces() {
    return allPieces;
  }

  /** Hours, each trip by its weight. */
  double hours() {
    return allHours;
  }

  /** The sum of (w y + size w d) ln(1 + h/d scale), without interpolation. */
  double at(double scale, double size) {
    double sum = 0;
    for (int i = 0; i < hoursPerDay.length; i++) {
      sum += (pieces[i] + size * days[i]) * Math.log1p(hoursPerDay[i] * scale);
    }
    return sum;
  }

  /**
   * Takes the sum of (w y + size w d) ln(1 + h/d e<sup>u</sup>) off at equally spaced points.
   *
   * @param shift where the cover lies on the lattice
   * @param first lattice number of the first point, in units of the rates' lattice
   * @param stride distance of the points in it
   * @param count number of points
   * @param out the sums are taken off these
   * @param mixed room for the lattice at this size
   */
  void takeOff(
      LatticeShift shift,
      double size,
      int first,
      int stride,
      int count,
      double[] out,
      double[] mixed) {
    int low = shift.base(first) - LatticeShift.BEFORE;
    int high = shift.base(first + (count - 1) * stride) + LatticeShift.AFTER;
    cover(low, high);
    int offset = low - lowest;
    int length = high - low + 1;
    if (allPieces > 0) {
      for (int k = 0; k < length; k++) {
        mixed[k] = size * byDays[offset + k] + byPieces[offset + k];
      }
    } else {
      for (int k = 0; k < length; k++) {
        mixed[k] = size * byDays[offset + k];
      }
    }
    shift.takeOff(mixed, low, first, stride, count, out);
  }

  /** Sees to it that the lattice reaches from one number to another, and a little further. */
  private void cover(int low, int high) {
    if (low >= lowest && high <= highest) {
      return;
    }
    int newLowest = Math.min(lowest, low - SLACK);
    int newHighest = Math.max(highest, high + SLACK);
    double[] newDays = new double[newHighest - newLowest + 1];
    double[] newPieces = new double[newDays.length];
    for (int k = 0; k < newDays.length; k++) {
      int number = newLowest + k;
      if (number >= lowest && number <= highest) {
        newDays[k] = byDays[number - lowest];
        newPieces[k] = byPieces[number - lowest];
      } else {
        double scale = Math.exp(number * STEP);
        double daySum = 0;
        double pieceSum = 0;
        for (int i = 0; i < hoursPerDay.length; i++) {
          double log = log1p(hoursPerDay[i] * scale);
          daySum += days[i] * log;
          pieceSum += pieces[i] * log;
        }
        newDays[k] = daySum;
        newPieces[k] = pieceSum;
      }
    }
    lowest = newLowest;
    highest = newHighest;
    byDays = newDays;
    byPieces = newPieces;
  }

  /** ln(1 + x), x &ge; 0; quicker than the library's, to 2e-13 relative. */
  static double log1p(double x) {
    if (x > 0.02) {
      return Math.log(1 + x);
    }
    double sum = 1.0 / 7;
    sum = 1.0 / 6 - x * sum;
    sum = 1.0 / 5 - x * sum;
    sum = 1.0 / 4 - x * sum;
    sum = 1.0 / 3 - x * sum;
    sum = 1.0 / 2 - x * sum;
    return x * (1 - x * sum);
  }
}
