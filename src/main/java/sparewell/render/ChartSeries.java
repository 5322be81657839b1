package sparewell.render;

import java.util.List;
import sparewell.table.Chart;

/**
 * The series of a chart. Colours are those of Okabe and Ito, made to stay apart for colour-blind
 * eyes; fills also differ by pattern and lines by dash and marker, for prints in grey.
 *
 * @see "Okabe and Ito, Color Universal Design (2008), the palette's values from memory"
 */
final class ChartSeries {
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

  private final Xml xml;
  private final Plot plot;

  ChartSeries(Xml xml, Plot plot) {
    this.xml = xml;
    this.plot = plot;
  }

  void bar(int index) {
    Plot.Series series = start(index);
    xml.open("c:spPr");
    if (series.hasInterval()) {
      // Light, so that the error bars show on it.
      xml.open("a:solidFill").leaf("a:srgbClr val='{}'", LIGHT).close();
    } else if (series.mark() == Chart.Mark.USUAL) {
      fill(index);
    } else {
      xml.leaf("a:noFill");
    }
    outline(INK, THIN, "solid");
    xml.close().leaf("c:invertIfNegative val='0'");
    errorBars(series);
    categories();
    values("c:val", series.values());
    xml.close();
  }

  /** A series of a line chart; also markers over columns. */
  void line(int index) {
    Plot.Series series = start(index);
    lineAndMarker(index, series.mark());
    if (plot.chart().kind() != Chart.Kind.BANDS) {
      errorBars(series);
    }
    categories();
    values("c:val", series.values());
    xml.leaf("c:smooth val='0'").close();
  }

  void scatter(int index) {
    Plot.Series series = start(index);
    lineAndMarker(index, series.mark());
    words(series);
    errorBars(series);
    values("c:xVal", plot.x());
    values("c:yVal", series.values());
    xml.leaf("c:smooth val='0'").close();
  }

  /** A row's name, value and interval, lying. */
  void forest(int index) {
    Plot.Series series = start(index);
    if (series.words().isEmpty()) {
      lineAndMarker(
          index - 1, series.mark() == Chart.Mark.USUAL ? Chart.Mark.MARKERS : series.mark());
    } else {
      xml.open("c:spPr").open("a:ln w='{}'", THIN).leaf("a:noFill").close(2);
      xml.open("c:marker").leaf("c:symbol val='none'").close();
    }
    words(series);
    errorBars(series);
    values("c:xVal", series.values());
    values("c:yVal", plot.x());
    xml.leaf("c:smooth val='0'").close();
  }

  /** The two layers of a band: nothing up to its low end, a light fill up to its high end. */
  void band(int index) {
    Plot.Series series = plot.series().get(index);
    layer(index + 1, series.minus(), "low");
    layer(index + 2, series.plus(), "band");
  }

  private void layer(int index, Plot.Figures heights, String name) {
    xml.open("c:ser").leaf("c:idx val='{}'", index).leaf("c:order val='{}'", index);
    xml.open("c:tx").leafText("c:v", name).close().open("c:spPr");
    if (name.equals("low")) {
      xml.leaf("a:noFill");
    } else {
      xml.open("a:solidFill").leaf("a:srgbClr val='{}'", LIGHT).close();
    }
    xml.open("a:ln").leaf("a:noFill").close(2);
    categories();
    values("c:val", heights);
    xml.close();
  }

  private Plot.Series start(int index) {
    Plot.Series series = plot.series().get(index);
    xml.open("c:ser").leaf("c:idx val='{}'", index).leaf("c:order val='{}'", index);
    xml.open("c:tx").open("c:strRef").leafText("c:f", series.name().cells());
    points("c:strCache", series.name().values()).close(2);
    return series;
  }

  private void fill(int index) {
    String colour = COLOURS.get(index % COLOURS.size());
    String pattern = PATTERNS.get(index % PATTERNS.size());
    if (pattern.isEmpty()) {
      xml.open("a:solidFill").leaf("a:srgbClr val='{}'", colour).close();
    } else {
      xml.open("a:pattFill prst='{}'", pattern);
      xml.open("a:fgClr").leaf("a:srgbClr val='404040'").close();
      xml.open("a:bgClr").leaf("a:srgbClr val='{}'", colour).close(2);
    }
  }

  private void outline(String colour, int width, String dash) {
    xml.open("a:ln w='{}'", width).open("a:solidFill").leaf("a:srgbClr val='{}'", colour).close();
    xml.leaf("a:prstDash val='{}'", dash).close();
  }

  private void lineAndMarker(int index, Chart.Mark mark) {
    boolean overBars = plot.chart().kind() == Chart.Kind.COLUMN;
    String colour = overBars ? INK : COLOURS.get(index % COLOURS.size());
    xml.open("c:spPr");
    if (mark == Chart.Mark.MARKERS) {
      xml.open("a:ln w='{}'", THIN).leaf("a:noFill").close();
    } else {
      outline(colour, THICK, DASHES.get(index % DASHES.size()));
    }
    xml.close().open("c:marker");
    if (mark == Chart.Mark.LINE) {
      xml.leaf("c:symbol val='none'").close();
      return;
    }
    xml.leaf("c:symbol val='{}'", overBars ? "diamond" : MARKERS.get(index % MARKERS.size()));
    xml.leaf("c:size val='7'").open("c:spPr");
    xml.open("a:solidFill").leaf("a:srgbClr val='{}'", colour).close();
    outline(colour, THIN, "solid");
    xml.close(2);
  }

  private void words(Plot.Series series) {
    if (series.words().isEmpty()) {
      return;
    }
    xml.open("c:dLbls");
    for (int i = 0; i < series.words().size(); i++) {
      if (!series.words().get(i).isEmpty()) {
        xml.open("c:dLbl").leaf("c:idx val='{}'", i).open("c:tx").open("c:rich");
        xml.leaf("a:bodyPr").leaf("a:lstStyle").open("a:p").open("a:r");
        xml.leaf("a:rPr lang='en-US' sz='800'").leafText("a:t", series.words().get(i));
        xml.close(4).leaf("c:dLblPos val='{}'", place(i));
        shown(true).close();
      }
    }
    shown(false).close();
  }

  private String place(int point) {
    boolean beside = plot.chart().kind() == Chart.Kind.FOREST;
    return beside ? "l" : point % 2 == 0 ? "t" : "b";
  }

  private Xml shown(boolean value) {
    xml.leaf("c:showLegendKey val='0'").leaf("c:showVal val='{}'", value);
    xml.leaf("c:showCatName val='0'").leaf("c:showSerName val='0'");
    return xml.leaf("c:showPercent val='0'").leaf("c:showBubbleSize val='0'");
  }

  private void errorBars(Plot.Series series) {
    if (!series.hasInterval()) {
      return;
    }
    xml.open("c:errBars");
    if (plot.chart().kind() == Chart.Kind.SCATTER) {
      xml.leaf("c:errDir val='y'");
    } else if (plot.chart().kind() == Chart.Kind.FOREST) {
      xml.leaf("c:errDir val='x'");
    }
    xml.leaf("c:errBarType val='both'").leaf("c:errValType val='cust'");
    xml.leaf("c:noEndCap val='0'");
    values("c:plus", series.plus());
    values("c:minus", series.minus());
    xml.open("c:spPr");
    outline(INK, THIN + THIN / 2, "solid");
    xml.close(2);
  }

  private void categories() {
    if (plot.x().dates()) {
      values("c:cat", plot.x());
      return;
    }
    xml.open("c:cat").open("c:strRef").leafText("c:f", plot.x().cells());
    points("c:strCache", plot.x().values()).close(2);
  }

  private void values(String element, Plot.Figures figures) {
    xml.open(element).open("c:numRef").leafText("c:f", figures.cells());
    points("c:numCache", figures.values()).close(2);
  }

  private Xml points(String cache, List<Object> values) {
    xml.open(cache);
    if (cache.equals("c:numCache")) {
      xml.leafText("c:formatCode", Look.GENERAL);
    }
    xml.leaf("c:ptCount val='{}'", values.size());
    for (int i = 0; i < values.size(); i++) {
      Object value = values.get(i);
      if (value != null) {
        String text = value instanceof Double number ? SheetXml.number(number) : value.toString();
        xml.open("c:pt idx='{}'", i).leafText("c:v", text).close();
      }
    }
    return xml.close();
  }
}
