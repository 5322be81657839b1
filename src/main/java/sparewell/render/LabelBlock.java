package sparewell.render;

import java.util.ArrayList;
import java.util.List;
import sparewell.table.LabelGrid;
import sparewell.units.LengthUnit;

/** Puts labels side by side at their exact size: a strip for the tape, and the words below it. */
final class LabelBlock {
  private static final double PIXEL_POINTS = 0.75;
  private static final double INDENT_POINTS = 8;
  private static final double STRIP_POINTS = 15;

  private LabelBlock() {}

  static void widen(LabelGrid labels, Grid grid) {
    grid.exactSize = true;
    double width = wholePixels(points(labels.width().in(LengthUnit.MILLIMETRE)));
    for (int column = 1; column <= labels.across(); column++) {
      grid.widths.put(column, Measure.characters(width));
    }
  }

  /** Puts the labels from a row on; returns the first row that is free again. */
  static int lay(LabelGrid labels, Page page, Grid grid, int firstRow) {
    if (labels.labels().isEmpty()) {
      TextBlock.put(labels.whenEmpty(), grid, firstRow, Look.DEFAULT);
      return firstRow + 2;
    }
    grid.firstPrintedRow = firstRow;
    grid.lastPrintedColumn = labels.across();
    double width = grid.innerPoints(1) - INDENT_POINTS - Measure.CELL_MARGIN_POINTS;
    double whole = wholePixels(points(labels.height().in(LengthUnit.MILLIMETRE)));
    double inside = whole - STRIP_POINTS;
    List<LabelFit.Fitted> fitted = new ArrayList<>();
    for (LabelGrid.Label label : labels.labels()) {
      fitted.addAll(LabelFit.fit(label, width, inside - 2));
    }
    int contentRows = (int) Math.ceil(inside / Measure.HIGHEST_ROW_POINTS);
    int perPage = Page.labelsDown(labels, page.paper());
    int row = firstRow;
    for (int i = 0; i < fitted.size(); i += labels.across()) {
      int line = i / labels.across();
      if (line > 0 && line % perPage == 0) {
        grid.pageBreaks.add(row - 1);
      }
      grid.heights.put(row, STRIP_POINTS);
      double left = inside;
      for (int part = 1; part <= contentRows; part++) {
        double height = wholePixels(left / (contentRows - part + 1));
        grid.heights.put(row + part, height);
        left -= height;
      }
      for (int j = i; j < Math.min(fitted.size(), i + labels.across()); j++) {
        put(fitted.get(j), grid, row, j - i + 1, contentRows);
      }
      row += 1 + contentRows;
    }
    grid.pageBreaks.add(row - 1);
    return row + 1;
  }

  private static void put(LabelFit.Fitted label, Grid grid, int row, int column, int contentRows) {
    String tape = label.tape().map(one -> one.word() + " tape").orElse("");
    String part = label.parts() > 1 ? label.part() + " of " + label.parts() : "";
    String words = tape.isEmpty() || part.isEmpty() ? tape + part : tape + " · " + part;
    String rgb = label.tape().map(LabelGrid.Tape::rgb).orElse("");
    grid.put(row, column, words.isEmpty() ? null : words, Look.tape(rgb));
    grid.put(row + 1, column, new Grid.RichText(label.runs()), Look.LABEL);
    for (int more = 2; more <= contentRows; more++) {
      grid.put(row + more, column, null, Look.LABEL);
    }
    if (contentRows > 1) {
      grid.merged.add(Grid.range(row + 1, column, row + contentRows, column));
    }
  }

  private static double points(double millimetres) {
    return millimetres * Measure.POINTS_PER_MM;
  }

  /** Spreadsheets keep sizes in whole pixels; rounded down, so that a page never overflows. */
  private static double wholePixels(double points) {
    return Math.floor(points / PIXEL_POINTS + 1e-9) * PIXEL_POINTS;
  }
}
