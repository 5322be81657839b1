package sparewell.render;

import java.util.List;
import sparewell.table.Chart;

/**
 * A chart with its figures found in the sheet.
 *
 * @param xTitle title of the axis of categories with its unit
 * @param yTitle title of the axis of values with its unit
 * @param x categories, or the numbers across; for a forest the places of its rows
 */
record Plot(Chart chart, String xTitle, String yTitle, Figures x, List<Series> series) {
  /** The lowest end of an interval, or the lowest value, where that is under 0; else 0. */
  double leastEnd() {
    double least = 0;
    for (Series one : series) {
      for (int row = 0; row < one.values().values().size(); row++) {
        if (one.values().values().get(row) instanceof Double value) {
          least = Math.min(least, value - one.minus().length(row));
        }
      }
    }
    return least;
  }

  double nameShare(double widthPoints) {
    double widest =
        series.get(0).words().stream()
            .mapToDouble(word -> TextSize.width(word, 8, false))
            .max()
            .orElse(0);
    return Math.min(0.5, (widest + 24) / widthPoints);
  }

  /**
   * Cells and what they hold now.
   *
   * @param cells reference with the sheet
   * @param values a Double, a String, or null for nothing
   * @param share whether the values are shares of one
   */
  record Figures(String cells, List<Object> values, String pattern, boolean share) {
    boolean dates() {
      return pattern.startsWith("yyyy");
    }

    /** The length in a row; 0 where there is none. */
    double length(int row) {
      return row < values.size() && values.get(row) instanceof Double length ? length : 0;
    }
  }

  /**
   * A series.
   *
   * @param minus lengths of the error bars towards the low end, of a band its low end; no values
   *     where there are none
   * @param plus lengths towards the high end, of a band its whole height
   * @param words words beside the markers; empty where there are none
   */
  record Series(
      Figures name,
      Figures values,
      Chart.Mark mark,
      Figures minus,
      Figures plus,
      List<String> words) {
    boolean hasInterval() {
      return !plus.values().isEmpty();
    }
  }
}
