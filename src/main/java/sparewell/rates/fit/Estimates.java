package sparewell.rates.fit;

import java.util.List;
import sparewell.numerics.WeightedCells;

/** Reads means and 90 % intervals off weighted draws. */
final class Estimates {
  private static final double LEAST_CELL = 1e-8;

  /** Each draw of a multiplier is a point: spread over 5 %, they make a smooth interval. */
  private static final double SMOOTH = 0.05;

  private Estimates() {}

  /** The rate of a style, pieces per hour. */
  static RateFit.Estimate rate(List<Draw> draws, int style) {
    WeightedCells cells = new WeightedCells();
    double mean = 0;
    for (Draw draw : draws) {
      RatePoints rates = draw.rate(style);
      for (int i = 0; i < rates.count(); i++) {
        mean += draw.weight() * rates.weight(i) * rates.rate(i);
      }
      addCells(cells, draw.weight(), rates);
    }
    return estimate(mean, cells);
  }

  /** The multiplier of a cover. */
  static RateFit.Estimate multiplier(List<Draw> draws, int cover) {
    WeightedCells cells = new WeightedCells();
    double mean = 0;
    for (Draw draw : draws) {
      mean += draw.weight() * draw.multiplier(cover);
      cells.add(Math.log(draw.multiplier(cover)), SMOOTH, draw.weight());
    }
    return estimate(mean, cells);
  }

  /**
   * Adds the cells around the points of a draw, in log rate. Out of the values at a point and its
   * neighbours, w<sub>-</sub>, w, w<sub>+</sub>, a parabola gives the weight of its cell, w +
   * (w<sub>-</sub> - 2w + w<sub>+</sub>)/24, and the rise over it, (w<sub>+</sub> -
   * w<sub>-</sub>)/2. Even cells of weight w would widen the interval by up to 1 %.
   */
  private static void addCells(WeightedCells cells, double share, RatePoints rates) {
    double first = rates.logFirst();
    int last = rates.count() - 2;
    for (int i = 0; i <= last; i++) {
      if (share * rates.weight(i) >= LEAST_CELL) {
        double here = rates.weight(i);
        double before = i > 0 ? rates.weight(i - 1) : here;
        double after = i < last ? rates.weight(i + 1) : here;
        double weight = here + (before - 2 * here + after) / 24;
        cells.add(
            first + i * rates.step(), rates.step(), share * weight, share * (after - before) / 2);
      }
    }
    double rest = share * rates.weight(last + 1);
    if (rest >= LEAST_CELL) {
      cells.add(rates.logTail(), rates.tailWidth(), rest);
    }
  }

  private static RateFit.Estimate estimate(double mean, WeightedCells logs) {
    return new RateFit.Estimate(mean, Math.exp(logs.quantile(0.05)), Math.exp(logs.quantile(0.95)));
  }
}
