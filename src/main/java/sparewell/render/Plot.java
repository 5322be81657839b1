package sparewell.render;

import java.util.List;
import sparewell.table.Chart;

/** A chart with its figures found in the sheet; {@code x} has its categories, or numbers. */
record Plot(Chart chart, String xTitle, String yTitle, Figures x, List<Series> series) {
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
  }

  /**
   * A series.
   *
   * @param minus lengths of the error bars towards the low end, of a band its low end; no values
   *     where there are none
   * @param plus lengths towards the high end, of a band its whole height
   */
  record Series(Figures name, Figures values, Chart.Mark mark, Figures minus, Figures plus) {
    boolean hasInterval() {
      return !plus.values().isEmpty();
    }
  }
}
