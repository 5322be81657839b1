package sparewell.render;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import sparewell.table.Chart;

/** A chart part; the order of elements follows the schema of ECMA-376 part 1, section 21.2. */
record ChartXml(Plot plot, Chart.Kind kind) {
  private static final double ROOM_FOR_LABELS_POINTS = 460;
  private static final double LABEL_GAP_POINTS = 8;
  private static final int DATES_SHOWN = 5;

  /** Angles in 60,000ths of a degree, clockwise. */
  private static final int UPWARDS = -5_400_000;

  private static final int TILTED = -2_700_000;

  static String frame(Plot plot, Grid.Anchor anchor) {
    String words = plot.chart().title() + ". " + plot.chart().see();
    return Xml.filled("chart frame", anchor.ids().getAsInt(), words, anchor.chart());
  }

  void write(Xml xml) {
    String legend = plot.series().size() > 1 ? Xml.filled("legend") : "";
    xml.add("chart", title(plot.chart().title(), 1_200, 0), groups(), axes(), legend);
  }

  private String groups() {
    ChartSeries series = new ChartSeries(plot);
    List<Integer> bars = new ArrayList<>();
    List<Integer> others = new ArrayList<>();
    boolean standing = kind == Chart.Kind.COLUMN || kind == Chart.Kind.STACKED_COLUMN;
    for (int i = 0; i < plot.series().size(); i++) {
      boolean usual = plot.series().get(i).mark() == Chart.Mark.USUAL;
      (kind == Chart.Kind.BAR || standing && usual ? bars : others).add(i);
    }
    StringBuilder all = new StringBuilder();
    if (!bars.isEmpty()) {
      boolean stacked = kind == Chart.Kind.STACKED_COLUMN;
      all.append(
          Xml.filled(
              "bars",
              kind == Chart.Kind.BAR ? "bar" : "col",
              stacked ? "stacked" : "clustered",
              Xml.each(bars, series::bar),
              stacked ? 100 : 0));
    }
    if (kind == Chart.Kind.BANDS) {
      List<Integer> bands =
          others.stream().filter(i -> plot.series().get(i).hasInterval()).toList();
      all.append(Xml.filled("bands", Xml.each(bands, series::band)));
    }
    if (!others.isEmpty()) {
      String group = kind == Chart.Kind.SCATTER ? "points" : "lines";
      all.append(Xml.filled(group, Xml.each(others, series::line)));
    }
    return all.toString();
  }

  private String axes() {
    boolean lying = kind == Chart.Kind.BAR;
    boolean numbers = kind == Chart.Kind.SCATTER;
    boolean dates = !numbers && plot.x().dates();
    boolean tilted = !lying && !numbers && !dates && labelPoints() > ROOM_FOR_LABELS_POINTS;
    Plot.Figures values = plot.series().get(0).values();
    boolean bars = !numbers && kind != Chart.Kind.LINE;
    double top = values.share() && !bars ? 1 : highestBar();
    return Xml.filled(
        "axes",
        numbers ? "c:valAx" : dates ? "c:dateAx" : "c:catAx",
        scaling(lying ? "maxMin" : "minMax", numbers && plot.x().share() ? 1 : 0, false),
        lying ? "l" : "b",
        title(plot.xTitle(), 900, lying ? UPWARDS : 0),
        ticks(numbers || dates ? plot.x() : null, "low", tilted ? TILTED : 0),
        steps(numbers, dates, lying),
        scaling("minMax", top, bars && allPositive() || values.share()),
        lying ? "b" : "l",
        Xml.filled("gridlines"),
        title(plot.yTitle(), 900, lying ? 0 : UPWARDS),
        ticks(values, lying ? "nextTo" : "low", 0),
        // The axis of reversed categories starts on top; the values belong at the bottom.
        lying ? "max" : "autoZero",
        numbers || kind == Chart.Kind.BANDS ? "midCat" : "between");
  }

  /** Every name shows beside lying bars; below standing ones as many as there is room for. */
  private String steps(boolean numbers, boolean dates, boolean lying) {
    if (numbers) {
      return Xml.filled("number steps");
    }
    int skip = lying ? 1 : 1 + plot.x().values().size() / 45;
    return dates ? Xml.filled("date steps", daysApart()) : Xml.filled("name steps", skip);
  }

  private long daysApart() {
    DoubleSummaryStatistics days =
        plot.x().values().stream()
            .filter(Double.class::isInstance)
            .mapToDouble(Double.class::cast)
            .summaryStatistics();
    return Math.max(1, (long) Math.ceil((days.getMax() - days.getMin()) / DATES_SHOWN));
  }

  private double labelPoints() {
    return plot.x().values().stream()
            .mapToDouble(
                value ->
                    TextSize.width(value == null ? "" : value.toString(), 8, false)
                        + LABEL_GAP_POINTS)
            .max()
            .orElse(0)
        * plot.x().values().size();
  }

  private boolean allPositive() {
    return plot.series().stream()
        .flatMap(series -> series.values().values().stream())
        .allMatch(value -> !(value instanceof Double number) || number >= 0);
  }

  /**
   * A round number above the highest error bar, because programs may cut error bars off; 0 where
   * there are none.
   */
  private double highestBar() {
    double highest = 0;
    for (Plot.Series series : plot.series()) {
      for (int i = 0; i < series.values().values().size(); i++) {
        if (series.values().values().get(i) instanceof Double value) {
          boolean known = series.hasInterval() && series.plus().values().get(i) != null;
          highest = Math.max(highest, value + (known ? (Double) series.plus().values().get(i) : 0));
        }
      }
    }
    if (highest <= 0
        || kind == Chart.Kind.BANDS
        || plot.series().stream().noneMatch(Plot.Series::hasInterval)) {
      return 0;
    }
    double step = Math.pow(10, Math.floor(Math.log10(highest))) / 2;
    return Math.ceil(highest / step) * step;
  }

  private static String scaling(String orientation, double most, boolean fromZero) {
    String least = most == 1 || fromZero ? Xml.filled("from zero") : "";
    String end = most > 0 ? Xml.filled("most", SheetXml.number(most)) : "";
    return Xml.filled("scaling", orientation, end, least);
  }

  private static String ticks(Plot.Figures numbers, String labels, int angle) {
    String pattern = numbers == null ? "" : Xml.filled("pattern", axisPattern(numbers));
    boolean days = numbers != null && numbers.dates(); // some programs draw a mark for each
    return Xml.filled("ticks", pattern, days ? "none" : "out", labels, angle);
  }

  /** Pattern without needless decimals: from ten on the steps of an axis are whole numbers. */
  private static String axisPattern(Plot.Figures numbers) {
    if (numbers.share()) {
      return "0%";
    }
    if (numbers.dates()) {
      return "d mmm";
    }
    double most =
        numbers.values().stream()
            .filter(Double.class::isInstance)
            .mapToDouble(value -> Math.abs((Double) value))
            .max()
            .orElse(0);
    return most >= 10 ? "#,##0" : Look.GENERAL;
  }

  private static String title(String text, int hundredthPoints, int angle) {
    return text.isEmpty() ? "" : Xml.filled("title", angle, hundredthPoints, text);
  }
}
