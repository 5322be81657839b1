package sparewell.render;

import java.util.List;
import sparewell.table.Chart;

/**
 * The series of a chart. Colours are those of Okabe and Ito, made to stay apart for colour-blind
 * eyes; fills also differ by pattern and lines by dash and marker, for prints in grey.
 *
 * @see "Okabe and Ito, Color Universal Design (2008), the palette's values from memory"
 */
record ChartSeries(Plot plot) {
  private static final List<String> COLOURS =
      List.of("0072B2", "E69F00", "009E73", "CC79A7", "56B4E9", "D55E00", "000000");
  private static final List<String> PATTERNS =
      List.of("", "wdUpDiag", "", "pct25", "dkHorz", "", "smGrid");
  private static final List<String> DASHES =
      List.of("solid", "dash", "sysDot", "dashDot", "lgDash", "sysDash", "solid");
  private static final List<String> MARKERS =
      List.of("circle", "square", "triangle", "diamond", "x", "star", "plus");
  private static final String INK = "000000";
  private static final String LIGHT = "9CCBEA";
  private static final int THIN = 9_525;
  private static final int THICK = 22_225;

  String bar(int index) {
    Plot.Series series = plot.series().get(index);
    String fill = series.mark() == Chart.Mark.USUAL ? fill(index) : Xml.filled("no fill of shapes");
    return Xml.filled(
        "bar",
        name(index),
        series.hasInterval() ? Xml.filled("filled", LIGHT) : fill, // error bars show on a light one
        outline(INK, THIN, "solid"),
        errorBars(series),
        categories(),
        values("c:val", series.values()));
  }

  String line(int index) {
    Plot.Series series = plot.series().get(index);
    boolean scatter = plot.chart().kind() == Chart.Kind.SCATTER;
    return Xml.filled(
        scatter ? "scatter" : "line",
        name(index),
        lineAndMarker(index, series.mark()),
        plot.chart().kind() == Chart.Kind.BANDS ? "" : errorBars(series),
        scatter ? values("c:xVal", plot.x()) : categories(),
        values(scatter ? "c:yVal" : "c:val", series.values()));
  }

  /** The two layers of a band: nothing up to its low end, a light fill up to its high end. */
  String band(int index) {
    Plot.Series series = plot.series().get(index);
    return layer(index + 1, "low", Xml.filled("no fill of shapes"), series.minus())
        + layer(index + 2, "band", Xml.filled("filled", LIGHT), series.plus());
  }

  private String layer(int index, String name, String fill, Plot.Figures heights) {
    return Xml.filled("layer of a band", index, name, fill, categories(), values("c:val", heights));
  }

  private String name(int index) {
    return Xml.filled("series name", index, texts(plot.series().get(index).name()));
  }

  private static String fill(int index) {
    String colour = COLOURS.get(index % COLOURS.size());
    String pattern = PATTERNS.get(index % PATTERNS.size());
    return pattern.isEmpty()
        ? Xml.filled("filled", colour)
        : Xml.filled("pattern fill", pattern, colour);
  }

  private static String outline(String colour, int width, String dash) {
    return Xml.filled("outline", width, colour, dash, "");
  }

  private String lineAndMarker(int index, Chart.Mark mark) {
    boolean overBars = plot.chart().kind() == Chart.Kind.COLUMN;
    String colour = overBars ? INK : COLOURS.get(index % COLOURS.size());
    String line =
        mark == Chart.Mark.MARKERS
            ? Xml.filled("no line")
            : outline(colour, THICK, DASHES.get(index % DASHES.size()));
    String marker =
        Xml.filled(
            "marker",
            overBars ? "diamond" : MARKERS.get(index % MARKERS.size()),
            Xml.filled("filled", colour),
            outline(colour, THIN, "solid"));
    return Xml.filled("line and marker", line, marker);
  }

  private String errorBars(Plot.Series series) {
    if (!series.hasInterval()) {
      return "";
    }
    return Xml.filled(
        "error bars",
        plot.chart().kind() == Chart.Kind.SCATTER ? Xml.filled("direction") : "",
        values("c:plus", series.plus()),
        values("c:minus", series.minus()),
        outline(INK, THIN + THIN / 2, "solid"));
  }

  private String categories() {
    return plot.x().dates() ? values("c:cat", plot.x()) : Xml.filled("categories", texts(plot.x()));
  }

  private static String texts(Plot.Figures figures) {
    return Xml.filled(
        "text figures", figures.cells(), figures.values().size(), points(figures.values()));
  }

  private static String values(String element, Plot.Figures figures) {
    List<Object> values = figures.values();
    return Xml.filled("number figures", element, figures.cells(), values.size(), points(values));
  }

  private static String points(List<Object> values) {
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < values.size(); i++) {
      Object value = values.get(i);
      if (value != null) {
        Object shown = value instanceof Double number ? SheetXml.number(number) : value;
        all.append(Xml.filled("point", i, shown));
      }
    }
    return all.toString();
  }
}
