package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.junit.jupiter.api.Test;

/** Charts on written sheets. */
class SheetChartsTest extends SampleBookFixture {
  @Test
  void chartsPointAtCells() {
    XSSFSheet sheet = book.getSheet("Charts");
    List<XSSFChart> charts = sheet.getDrawingPatriarch().getCharts();
    assertEquals(5, charts.size());
    assertEquals("Uses by thing", charts.get(0).getTitleText().getString());
    var bars = charts.get(0).getCTChart().getPlotArea().getBarChartArray(0).getSerArray(0);
    String cells = bars.getVal().getNumRef().getF();
    assertEquals("'Charts'!$B$120:$B$137", cells);
    assertEquals(
        3.2, sheet.getRow(119).getCell(1).getNumericCellValue(), "first value of the series");
    assertNull(sheet.getRow(3).getCell(0), "nothing under a chart");
  }

  @Test
  void aForecastHasAPanelForEachSeriesWithItsBand() {
    XSSFSheet sheet = book.getSheet("Forecast");
    List<XSSFChart> charts = sheet.getDrawingPatriarch().getCharts();
    assertEquals(5, charts.size(), "a panel for each series");
    assertEquals("Thing 1", charts.get(0).getTitleText().getString());
    var plot = charts.get(0).getCTChart().getPlotArea();
    assertEquals(1, plot.sizeOfDateAxArray());
    assertEquals("d mmm", plot.getDateAxArray(0).getNumFmt().getFormatCode());
    var layers = plot.getAreaChartArray(0);
    assertEquals("stacked", layers.getGrouping().getVal().toString());
    var low = layers.getSerArray(0).getVal().getNumRef().getNumCache();
    var band = layers.getSerArray(1).getVal().getNumRef().getNumCache();
    assertEquals(14 * 1.4 * 0.6, Double.parseDouble(low.getPtArray(0).getV()), 1e-9);
    assertEquals(14 * 1.4 * 0.4 + 5, Double.parseDouble(band.getPtArray(0).getV()), 1e-9);
  }

  @Test
  void axesHaveNoNeedlessDecimals() {
    List<XSSFChart> charts = book.getSheet("Charts").getDrawingPatriarch().getCharts();
    var rates = charts.get(4).getCTChart().getPlotArea();
    assertEquals("#,##0", rates.getValAxArray(0).getNumFmt().getFormatCode(), "places to 87.5");
    assertEquals("General", rates.getValAxArray(1).getNumFmt().getFormatCode(), "rates to 3.2");
  }
}
