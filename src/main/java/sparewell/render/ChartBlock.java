package sparewell.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.table.Chart;
import sparewell.table.Format;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;

/** Puts a chart over cells, and its figures where they are not in a table of the sheet already. */
final class ChartBlock {
  private static final Plot.Figures NONE = new Plot.Figures("", List.of(), Look.GENERAL, false);

  /** Between a chart and the sentence under it. */
  private static final double GAP_POINTS = 4;

  private static final double WIDEST_FIGURE_POINTS = 150;

  private final Grid grid;
  private final SheetTable<?> data;

  private final int firstRow;

  private final Map<String, Plot.Figures> found = new LinkedHashMap<>();
  private final Map<String, Plot.Figures> names = new LinkedHashMap<>();
  private final Map<String, Integer> columns = new LinkedHashMap<>();

  private ChartBlock(Grid grid, SheetTable<?> data, int firstRow) {
    this.grid = grid;
    this.data = data;
    this.firstRow = firstRow;
  }

  static void lay(ReportSheet sheet, Chart chart, SheetTable<?> data, Grid grid, int row) {
    int rows = chart.coveredRows();
    TextBlock.put(chart.see(), grid, row + rows, Look.DEFAULT);
    if (chart.data().rows().isEmpty()) {
      TextBlock.put(chart.data().whenEmpty(), grid, row, Look.DEFAULT);
      return;
    }
    Optional<Cell> table = Layout.cellOf(sheet, chart.data(), 0);
    ChartBlock block = new ChartBlock(grid, data, table.map(Cell::row).orElse(row + 2));
    if (table.isPresent()) {
      block.find(1, false);
    } else {
      grid.put(row, grid.sideColumn, "Figures of the chart: " + chart.title(), Look.NOTE_LINE);
      block.find(grid.sideColumn, true);
      grid.sideColumn += data.columns().size();
    }
    if (chart.kind() == Chart.Kind.BANDS) {
      grid.titlesOfDrawn.add(row);
      TextBlock.put(chart.title(), grid, row, Look.HEADING);
      block.panels(chart, row + 1);
    } else {
      block.draw(block.plot(chart, row), row, 0, Layout.DRAWN_WIDTH_POINTS, rows);
    }
    grid.sideColumn++;
  }

  private void draw(Plot plot, int row, double left, double width, int rows) {
    grid.drawn.add(
        new Grid.Drawn(
            row,
            left * grid.print,
            Math.round(width * grid.print * Measure.EMU_PER_POINT),
            Math.round(
                (rows * Layout.ROW_POINTS - GAP_POINTS) * grid.print * Measure.EMU_PER_POINT),
            Optional.of(plot),
            anchor -> ChartXml.frame(plot, anchor)));
  }

  private void panels(Chart chart, int firstRow) {
    double apart = Layout.DRAWN_WIDTH_POINTS / Chart.PANELS_ACROSS;
    for (int i = 0; i < chart.series().size(); i++) {
      Chart.Series one = chart.series().get(i);
      Chart panel =
          new Chart(
              chart.kind(),
              one.heading(),
              chart.xTitle(),
              chart.yTitle(),
              chart.see(),
              chart.data(),
              chart.x(),
              List.of(one));
      int row = firstRow + i / Chart.PANELS_ACROSS * Chart.PANEL_ROWS;
      double left = i % Chart.PANELS_ACROSS * apart;
      draw(plot(panel, firstRow - 1), row, left, apart - GAP_POINTS, Chart.PANEL_ROWS);
    }
  }

  /** Notes where each column of the data stands, and puts it there if asked. */
  private void find(int firstColumn, boolean put) {
    for (int i = 0; i < data.columns().size(); i++) {
      int at = firstColumn + i;
      List<Object> values = data.values().get(i);
      String pattern = data.patterns().get(i);
      if (put) {
        grid.put(firstRow - 1, at, data.headings().get(i), Look.FIGURE_HEAD);
        widen(at, data.headings().get(i), values);
        for (int row = 0; row < values.size(); row++) {
          boolean text = values.get(row) instanceof String;
          Look look = Look.figure(text ? Look.AS_TEXT : pattern);
          grid.put(firstRow + row, at, values.get(row), look);
        }
      }
      String heading = data.columns().get(i).heading();
      columns.put(heading, at);
      boolean share = data.columns().get(i).format() == Format.PROBABILITY;
      found.put(heading, new Plot.Figures(cells(firstRow, at, values), values, pattern, share));
      List<Object> name = List.of(data.headings().get(i));
      names.put(heading, new Plot.Figures(cells(firstRow - 1, at, name), name, "", false));
    }
  }

  private void widen(int at, String heading, List<Object> values) {
    double size = Look.FIGURE_HEAD.face().points();
    double points = TextSize.width(heading, size, false);
    for (Object value : values) {
      points =
          value instanceof String text
              ? Math.max(points, TextSize.width(text, size, false))
              : points;
    }
    points = Math.min(points, WIDEST_FIGURE_POINTS) + 4 * Measure.CELL_MARGIN_POINTS;
    grid.widths.merge(at, Math.max(Measure.DEFAULT_WIDTH, Measure.characters(points)), Math::max);
  }

  private Plot plot(Chart chart, int chartRow) {
    List<Plot.Series> series = new ArrayList<>();
    for (Chart.Series one : chart.series()) {
      Plot.Figures minus = NONE;
      Plot.Figures plus = NONE;
      if (one.interval().isPresent()) {
        Chart.Interval interval = one.interval().get();
        boolean band = chart.kind() == Chart.Kind.BANDS;
        String from = band ? interval.lowHeading() : one.heading();
        minus =
            band
                ? figures(interval.lowHeading())
                : difference(one.heading(), interval.lowHeading(), chartRow, "down to ");
        plus = difference(interval.highHeading(), from, chartRow, "up to ");
      }
      series.add(
          new Plot.Series(
              names.get(one.heading()), figures(one.heading()), one.mark(), minus, plus));
    }
    return new Plot(
        chart,
        chart.xTitle() + unit(chart.x()),
        chart.yTitle() + unit(chart.series().get(0).heading()),
        figures(chart.x()),
        series);
  }

  /**
   * Lengths of error bars as formulas in cells beside the printed part: a chart wants lengths, and
   * they must follow when the table is sorted.
   */
  private Plot.Figures difference(String more, String less, int chartRow, String what) {
    int at = grid.sideColumn++;
    List<Object> high = figures(more).values();
    List<Object> low = figures(less).values();
    List<Object> lengths = new ArrayList<>();
    String heading = what + (what.startsWith("d") ? less : more);
    grid.put(chartRow + 1, at, heading, Look.FIGURE_HEAD);
    widen(at, heading, List.of());
    for (int i = 0; i < high.size(); i++) {
      if (high.get(i) instanceof Double above && low.get(i) instanceof Double below) {
        double length = above - below;
        String formula =
            Grid.reference(firstRow + i, columns.get(more))
                + "-"
                + Grid.reference(firstRow + i, columns.get(less));
        grid.put(
            chartRow + 2 + i, at, new Grid.Formula(formula, length), Look.figure(Look.GENERAL));
        lengths.add(length);
      } else {
        lengths.add(null);
      }
    }
    return new Plot.Figures(cells(chartRow + 2, at, lengths), lengths, Look.GENERAL, false);
  }

  private Plot.Figures figures(String heading) {
    Plot.Figures figures = found.get(heading);
    if (figures == null) {
      throw new IllegalArgumentException("no column '" + heading + "' among " + found.keySet());
    }
    return figures;
  }

  /** Unit such as {@code " (lb)"}: what a column's shown heading has more than its plain one. */
  private String unit(String heading) {
    for (int i = 0; i < data.columns().size(); i++) {
      if (data.columns().get(i).heading().equals(heading)) {
        return data.headings().get(i).substring(heading.length());
      }
    }
    return "";
  }

  private String cells(int row, int column, List<Object> values) {
    return Grid.quoted(grid.name)
        + "!"
        + Grid.fixedRange(row, column, row + values.size() - 1, column);
  }
}
