package sparewell.render;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import sparewell.table.Chart;
import sparewell.table.Layout;

/**
 * A chart part.
 *
 * @see "ECMA-376 part 1, section 21.2: the order of elements follows its schema"
 */
final class ChartXml {
  private static final int CATEGORY_AXIS = 1_001;
  private static final int VALUE_AXIS = 1_002;
  private static final double ROOM_FOR_LABELS_POINTS = 460;
  private static final double LABEL_GAP_POINTS = 8;
  private static final int DATES_SHOWN = 5;

  /** Title over a forest; axis and its title below. */
  private static final double ROOM_ABOVE_POINTS = 32;

  private static final double ROOM_BELOW_POINTS = 48;

  private final Plot plot;
  private final Chart.Kind kind;
  private final Xml xml;

  ChartXml(Plot plot, Xml xml) {
    this.plot = plot;
    this.xml = xml;
    this.kind = plot.chart().kind();
  }

  static void frame(Plot plot, Grid.Anchor anchor) {
    int id = anchor.ids().getAsInt();
    Xml xml = anchor.xml().open("xdr:graphicFrame macro=''").open("xdr:nvGraphicFramePr");
    String words = plot.chart().title() + ". " + plot.chart().see();
    xml.leaf("xdr:cNvPr id='{}' name='Chart {}' descr='{}'", id, id, words);
    xml.leaf("xdr:cNvGraphicFramePr").close();
    xml.open("xdr:xfrm").leaf("a:off x='0' y='0'").leaf("a:ext cx='0' cy='0'").close();
    xml.open("a:graphic").open("a:graphicData uri='{}'", Xml.CHART);
    String tag = "c:chart xmlns:c='{}' xmlns:r='{}' r:id='{}'";
    xml.leaf(tag, Xml.CHART, Xml.RELATIONS, anchor.chart()).close(3);
  }

  void write() {
    xml.open(
        "c:chartSpace xmlns:c='{}' xmlns:a='{}' xmlns:r='{}'",
        Xml.CHART,
        Xml.DRAWING,
        Xml.RELATIONS);
    xml.leaf("c:date1904 val='0'").leaf("c:lang val='en-US'");
    xml.leaf("c:roundedCorners val='0'");
    xml.open("c:chart");
    title(plot.chart().title(), 1_200, 0);
    xml.leaf("c:autoTitleDeleted val='0'");
    xml.open("c:plotArea");
    layout();
    groups();
    axes();
    xml.close();
    legend();
    xml.leaf("c:plotVisOnly val='1'").leaf("c:dispBlanksAs val='gap'").close();
    xml.open("c:spPr").open("a:solidFill").leaf("a:srgbClr val='FFFFFF'").close();
    xml.open("a:ln w='6350'").open("a:solidFill").leaf("a:srgbClr val='BFBFBF'").close(3);
    xml.open("c:txPr").leaf("a:bodyPr").leaf("a:lstStyle").open("a:p").open("a:pPr");
    xml.open("a:defRPr sz='900'").leaf("a:latin typeface='Arial'").close(2);
    xml.leaf("a:endParaRPr lang='en-US'").close(2);
    xml.close();
  }

  /** A forest leaves room for its rows' names, which are no labels of an axis. */
  private void layout() {
    if (kind != Chart.Kind.FOREST) {
      xml.leaf("c:layout");
      return;
    }
    double high = plot.chart().coveredRows() * Layout.ROW_POINTS;
    double left = plot.nameShare(Layout.DRAWN_WIDTH_POINTS);
    double top = ROOM_ABOVE_POINTS / high;
    double below = (plot.series().size() > 2 ? 1.4 : 1) * ROOM_BELOW_POINTS / high;
    xml.open("c:layout").open("c:manualLayout").leaf("c:layoutTarget val='inner'");
    xml.leaf("c:xMode val='edge'").leaf("c:yMode val='edge'");
    xml.leaf("c:x val='{}'", left).leaf("c:y val='{}'", top);
    xml.leaf("c:w val='{}'", 0.96 - left).leaf("c:h val='{}'", 1 - top - below).close(2);
  }

  private void legend() {
    boolean forest = kind == Chart.Kind.FOREST;
    if (plot.series().size() > (forest ? 2 : 1)) {
      xml.open("c:legend").leaf("c:legendPos val='b'");
      if (forest) {
        xml.open("c:legendEntry").leaf("c:idx val='0'").leaf("c:delete val='1'").close();
      }
      xml.leaf("c:overlay val='0'").close();
    }
  }

  private void groups() {
    ChartSeries writer = new ChartSeries(xml, plot);
    List<Integer> bars = new ArrayList<>();
    List<Integer> lines = new ArrayList<>();
    for (int i = 0; i < plot.series().size(); i++) {
      boolean standing = kind == Chart.Kind.COLUMN || kind == Chart.Kind.STACKED_COLUMN;
      boolean bar =
          kind == Chart.Kind.BAR || standing && plot.series().get(i).mark() == Chart.Mark.USUAL;
      (bar ? bars : lines).add(i);
    }
    if (!bars.isEmpty()) {
      boolean stacked = kind == Chart.Kind.STACKED_COLUMN;
      xml.open("c:barChart");
      xml.leaf("c:barDir val='{}'", kind == Chart.Kind.BAR ? "bar" : "col");
      xml.leaf("c:grouping val='{}'", stacked ? "stacked" : "clustered");
      xml.leaf("c:varyColors val='0'");
      bars.forEach(writer::bar);
      xml.leaf("c:gapWidth val='50'").leaf("c:overlap val='{}'", stacked ? 100 : 0);
      axisIds();
    }
    if (lines.isEmpty()) {
      return;
    }
    if (kind == Chart.Kind.BANDS) {
      xml.open("c:areaChart").leaf("c:grouping val='stacked'").leaf("c:varyColors val='0'");
      lines.stream().filter(i -> plot.series().get(i).hasInterval()).forEach(writer::band);
      axisIds();
    }
    if (kind == Chart.Kind.SCATTER || kind == Chart.Kind.FOREST) {
      xml.open("c:scatterChart").leaf("c:scatterStyle val='lineMarker'");
      xml.leaf("c:varyColors val='0'");
      lines.forEach(kind == Chart.Kind.FOREST ? writer::forest : writer::scatter);
    } else {
      xml.open("c:lineChart").leaf("c:grouping val='standard'");
      xml.leaf("c:varyColors val='0'");
      lines.forEach(writer::line);
      xml.leaf("c:marker val='1'");
    }
    axisIds();
  }

  private void axisIds() {
    xml.leaf("c:axId val='{}'", CATEGORY_AXIS).leaf("c:axId val='{}'", VALUE_AXIS).close();
  }

  private void forestAxes() {
    double least = plot.leastEnd();
    xml.open("c:valAx").leaf("c:axId val='{}'", CATEGORY_AXIS);
    xml.open("c:scaling").leaf("c:orientation val='minMax'");
    double most = highestBar();
    if (most > 0) {
      xml.leaf("c:max val='{}'", SheetXml.number(most));
    }
    xml.leaf("c:min val='{}'", SheetXml.number(least)).close();
    xml.leaf("c:delete val='0'").leaf("c:axPos val='b'");
    gridlines();
    title(plot.yTitle(), 900, 0);
    ticks(plot.series().get(1).values(), "nextTo");
    labelAngle(0);
    // The rows run downwards, so the axis at their greatest number stands at the bottom.
    xml.leaf("c:crossAx val='{}'", VALUE_AXIS).leaf("c:crosses val='max'");
    xml.leaf("c:crossBetween val='midCat'").close();
    xml.open("c:valAx").leaf("c:axId val='{}'", VALUE_AXIS);
    xml.open("c:scaling").leaf("c:orientation val='maxMin'");
    xml.leaf("c:max val='{}'", plot.x().values().size() + 0.5).leaf("c:min val='{}'", 0.5).close();
    xml.leaf("c:delete val='1'").leaf("c:axPos val='l'");
    xml.leaf("c:majorTickMark val='none'").leaf("c:minorTickMark val='none'");
    xml.leaf("c:tickLblPos val='none'").leaf("c:crossAx val='{}'", CATEGORY_AXIS);
    xml.leaf("c:crosses val='min'").leaf("c:crossBetween val='midCat'").close();
  }

  private void gridlines() {
    xml.open("c:majorGridlines").open("c:spPr").open("a:ln w='6350'");
    xml.open("a:solidFill").leaf("a:srgbClr val='D9D9D9'").close(4);
  }

  private void axes() {
    if (kind == Chart.Kind.FOREST) {
      forestAxes();
      return;
    }
    boolean dates = kind != Chart.Kind.SCATTER && plot.x().dates();
    boolean lying = kind == Chart.Kind.BAR;
    boolean numbers = kind == Chart.Kind.SCATTER;
    xml.open(numbers ? "c:valAx" : dates ? "c:dateAx" : "c:catAx")
        .leaf("c:axId val='{}'", CATEGORY_AXIS);
    scaling(lying ? "maxMin" : "minMax", numbers && plot.x().share() ? 1 : 0, false);
    xml.leaf("c:delete val='0'").leaf("c:axPos val='{}'", lying ? "l" : "b");
    title(plot.xTitle(), 900, lying ? -5_400_000 : 0);
    ticks(numbers || dates ? plot.x() : null, "low");
    boolean tilted = !lying && !numbers && !dates && labelPoints() > ROOM_FOR_LABELS_POINTS;
    labelAngle(tilted ? -2_700_000 : 0);
    xml.leaf("c:crossAx val='{}'", VALUE_AXIS).leaf("c:crosses val='autoZero'");
    if (numbers) {
      xml.leaf("c:crossBetween val='midCat'");
    } else if (dates) {
      xml.leaf("c:auto val='0'").leaf("c:lblOffset val='100'");
      xml.leaf("c:baseTimeUnit val='days'");
      xml.leaf("c:majorUnit val='{}'", daysApart()).leaf("c:majorTimeUnit val='days'");
    } else {
      xml.leaf("c:auto val='0'").leaf("c:lblAlgn val='ctr'");
      xml.leaf("c:lblOffset val='100'").leaf("c:tickLblSkip val='{}'", skip(lying));
      xml.leaf("c:noMultiLvlLbl val='1'");
    }
    xml.close();

    Plot.Figures values = plot.series().get(0).values();
    xml.open("c:valAx").leaf("c:axId val='{}'", VALUE_AXIS);
    boolean bars = kind != Chart.Kind.SCATTER && kind != Chart.Kind.LINE;
    double top = values.share() && !bars ? 1 : highestBar();
    scaling("minMax", top, bars && allPositive() || values.share());
    xml.leaf("c:delete val='0'").leaf("c:axPos val='{}'", lying ? "b" : "l");
    gridlines();
    title(plot.yTitle(), 900, lying ? 0 : -5_400_000);
    ticks(values, lying ? "nextTo" : "low");
    labelAngle(0);
    xml.leaf("c:crossAx val='{}'", CATEGORY_AXIS);
    // The axis of reversed categories starts on top; the values belong at the bottom.
    xml.leaf("c:crosses val='{}'", lying ? "max" : "autoZero");
    xml.leaf("c:crossBetween val='{}'", numbers || kind == Chart.Kind.BANDS ? "midCat" : "between")
        .close();
  }

  /** Days from one labelled date to the next, a few labels in all. */
  private long daysApart() {
    DoubleSummaryStatistics days =
        plot.x().values().stream()
            .filter(Double.class::isInstance)
            .mapToDouble(Double.class::cast)
            .summaryStatistics();
    return Math.max(1, (long) Math.ceil((days.getMax() - days.getMin()) / DATES_SHOWN));
  }

  /** Room that the names of categories need beside each other. */
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

  /** Every name shows beside lying bars; below standing ones as many as there is room for. */
  private int skip(boolean lying) {
    return lying ? 1 : 1 + plot.x().values().size() / 45;
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

  private void scaling(String orientation, double most, boolean fromZero) {
    xml.open("c:scaling").leaf("c:orientation val='{}'", orientation);
    if (most > 0) {
      xml.leaf("c:max val='{}'", SheetXml.number(most));
    }
    if (most == 1 || fromZero) {
      xml.leaf("c:min val='0'");
    }
    xml.close();
  }

  private void ticks(Plot.Figures numbers, String labels) {
    if (numbers != null) {
      xml.leaf("c:numFmt formatCode='{}' sourceLinked='0'", axisPattern(numbers));
    }
    boolean days = numbers != null && numbers.dates(); // some programs draw a mark for each
    xml.leaf("c:majorTickMark val='{}'", days ? "none" : "out").leaf("c:minorTickMark val='none'");
    xml.leaf("c:tickLblPos val='{}'", labels);
    xml.open("c:spPr").open("a:ln w='6350'").open("a:solidFill");
    xml.leaf("a:srgbClr val='7F7F7F'").close(3);
  }

  /** Without needless decimals: from ten on the steps of an axis are whole numbers. */
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

  private void labelAngle(int angle) {
    xml.open("c:txPr").leaf("a:bodyPr rot='{}' vert='horz'", angle).leaf("a:lstStyle");
    xml.open("a:p").open("a:pPr").leaf("a:defRPr sz='800'").close();
    xml.leaf("a:endParaRPr lang='en-US'").close(2);
  }

  private void title(String text, int hundredthPoints, int angle) {
    if (text.isEmpty()) {
      return;
    }
    xml.open("c:title").open("c:tx").open("c:rich");
    xml.leaf("a:bodyPr rot='{}' vert='horz'", angle).leaf("a:lstStyle").open("a:p");
    xml.open("a:pPr").leaf("a:defRPr sz='{}' b='1'", hundredthPoints).close().open("a:r");
    xml.leaf("a:rPr lang='en-US' sz='{}' b='1'", hundredthPoints);
    xml.leafText("a:t", text).close(4).leaf("c:overlay val='0'").close();
  }
}
