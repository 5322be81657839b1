package sparewell.render;

/**
 * Sizes of the page and of cells. Widths of columns count digits of the workbook's default font,
 * taken as 7 pixels at 96 per inch, as for the usual fonts at their usual size.
 */
final class Measure {
  static final double POINTS_PER_CHARACTER = 7 * 0.75;
  static final double CELL_MARGIN_POINTS = 4;
  static final double DEFAULT_WIDTH = 9.14;
  static final double HIGHEST_ROW_POINTS = 405;
  static final double POINTS_PER_MM = 72 / 25.4;
  static final long EMU_PER_POINT = 12_700;

  private Measure() {}

  static double characters(double points) {
    return points / POINTS_PER_CHARACTER;
  }

  static double rowPoints(int lines, double points) {
    return Math.min(HIGHEST_ROW_POINTS, Math.ceil(lines * points * 1.22 + 3));
  }
}
