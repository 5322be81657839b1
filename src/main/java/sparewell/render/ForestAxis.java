package sparewell.render;

/** Ends of the lying axis of a forest. */
final class ForestAxis {
  private ForestAxis() {}

  /** The lowest end of an interval, or the lowest value. */
  static double least(Plot plot) {
    double least = Double.POSITIVE_INFINITY;
    for (Plot.Series series : plot.series()) {
      for (int row = 0; row < series.values().values().size(); row++) {
        if (series.values().values().get(row) instanceof Double value) {
          least = Math.min(least, value - length(series.minus(), row));
        }
      }
    }
    return Double.isFinite(least) ? least : 0;
  }

  private static double length(Plot.Figures bars, int row) {
    return row < bars.values().size() && bars.values().get(row) instanceof Double length
        ? length
        : 0;
  }

  /** Share of the picture's width that the rows' names take. */
  static double nameShare(Plot plot, double widthPoints) {
    double widest =
        plot.series().get(0).words().stream()
            .mapToDouble(word -> TextSize.width(word, 8, false))
            .max()
            .orElse(0);
    return Math.min(0.5, (widest + 24) / widthPoints);
  }
}
