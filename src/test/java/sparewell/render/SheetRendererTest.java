package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** What another reader, Apache POI 5.5.1, finds in the sheets. */
class SheetRendererTest {
  private static final int HEADING_ROW = 5;

  private static XSSFWorkbook read(List<ReportSheet> sheets, RenderOptions options)
      throws IOException {
    byte[] bytes = Rendered.workbook(sheets, UnitSystem.US, options);
    return new XSSFWorkbook(new ByteArrayInputStream(bytes));
  }

  private static XSSFWorkbook book;

  @BeforeAll
  static void readSample() throws IOException {
    book = read(Sample.sheets(), Sample.options());
  }

  @AfterAll
  static void closeSample() throws IOException {
    book.close();
  }

  @Test
  void theSameSheetsGiveTheSameBytes() {
    assertArrayEquals(
        Rendered.workbook(Sample.sheets(), UnitSystem.US, Sample.options()),
        Rendered.workbook(Sample.sheets(), UnitSystem.US, Sample.options()));
  }

  @Test
  void theAnswerStandsOnTop() {
    assertEquals(
        "How full each shelf is, and which runs out first",
        book.getSheet("Shelves").getRow(0).getCell(0).getStringCellValue());
  }

  @Test
  void tableIsARealOneWithUnitsInItsHeadings() {
    XSSFTable table = book.getSheet("Shelves").getTables().get(0);
    assertEquals("sw_shelves", table.getName());
    assertEquals("A6:I47", table.getArea().formatAsString());
    assertEquals(1, table.getTotalsRowCount());
    assertEquals("A6:I46", table.getCTTable().getAutoFilter().getRef());
    assertTrue(table.getStyle().isShowRowStripes());
    Row heading = book.getSheet("Shelves").getRow(HEADING_ROW);
    assertEquals("Weight (lb)", heading.getCell(2).getStringCellValue());
    assertEquals("Cost (USD)", heading.getCell(5).getStringCellValue());
    for (int i = 0; i < 9; i++) {
      assertEquals(table.getColumns().get(i).getName(), heading.getCell(i).getStringCellValue());
    }
  }

  @Test
  void tablesKeepTheirNamesWhateverStandsBeforeThem() throws IOException {
    assertEquals(
        List.of("sw_s_first", "sw_s_then", "sw_b"), tableNames("1. First, of 3", "2. Then"));
    assertEquals(List.of("sw_s_then", "sw_b"), tableNames("1. Then: 12 of them"));
  }

  private static List<String> tableNames(String... titles) throws IOException {
    List<Column<String>> columns = List.of(Format.TEXT.onSheet("T", "", text -> text));
    List<Block> blocks = new ArrayList<>();
    for (String title : titles) {
      blocks.add(new Block.Rows(new Table<>("", title, columns, List.of("x"), "")));
    }
    blocks.add(new Block.Rows(new Table<>("b.csv", titles[0], columns, List.of("x"), "")));
    try (XSSFWorkbook book = read(List.of(new ReportSheet("S", "", blocks)), Sample.options())) {
      return book.getSheet("S").getTables().stream().map(XSSFTable::getName).toList();
    }
  }

  @Test
  void unitsFollowTheSystem() throws IOException {
    byte[] bytes = Rendered.workbook(Sample.sheets(), UnitSystem.METRIC, Sample.options());
    try (XSSFWorkbook other = new XSSFWorkbook(new ByteArrayInputStream(bytes))) {
      XSSFSheet sheet = other.getSheet("Shelves");
      assertEquals("Weight (kg)", sheet.getRow(HEADING_ROW).getCell(2).getStringCellValue());
      assertEquals(9, sheet.getPrintSetup().getPaperSize(), "A4");
    }
  }

  @Test
  void everyHeadingIsExplained() {
    XSSFSheet sheet = book.getSheet("Shelves");
    for (Cell cell : sheet.getRow(HEADING_ROW)) {
      assertNotNull(cell.getCellComment(), cell.getStringCellValue());
    }
    assertEquals(
        "Whole pieces on it.",
        sheet.getRow(HEADING_ROW).getCell(1).getCellComment().getString().getString());
  }

  @Test
  void textThatBeginsWithAnEqualsSignStaysText() {
    Cell cell = book.getSheet("Shelves").getRow(HEADING_ROW + 4).getCell(8);
    assertEquals(CellType.STRING, cell.getCellType());
    assertTrue(cell.getStringCellValue().startsWith("=SUM(A1:A3) is text"));
  }

  @Test
  void sumsAreFormulasWithTheValueThatAnotherEngineGets() {
    FormulaEvaluator evaluator = book.getCreationHelper().createFormulaEvaluator();
    int formulas = 0;
    for (Sheet sheet : book) {
      for (Row row : sheet) {
        for (Cell cell : row) {
          if (cell.getCellType() == CellType.FORMULA) {
            formulas++;
            double cached = cell.getNumericCellValue();
            assertEquals(evaluator.evaluate(cell).getNumberValue(), cached, 1e-9);
          }
        }
      }
    }
    assertTrue(formulas > 3, "formulas seen: " + formulas);
    Cell sum = book.getSheet("Shelves").getRow(46).getCell(1);
    assertEquals("SUBTOTAL(109,B7:B46)", sum.getCellFormula());
    assertEquals(
        Sample.SHELVES.stream().mapToInt(Sample.Shelf::pieces).sum(), sum.getNumericCellValue());
  }

  @Test
  void noCellHoldsAnError() {
    for (Sheet sheet : book) {
      for (Row row : sheet) {
        for (Cell cell : row) {
          assertFalse(cell.getCellType() == CellType.ERROR, cell.getAddress().toString());
        }
      }
    }
  }

  @Test
  void aNumberThatIsNoneIsRefused() {
    Table<Double> table =
        new Table<>(
            "",
            "",
            List.of(Format.NUMBER.onSheet("V", "", value -> value)),
            List.of(Double.NaN),
            "");
    List<ReportSheet> sheets = List.of(new ReportSheet("S", "?", List.of(new Block.Rows(table))));
    assertThrows(
        IllegalArgumentException.class,
        () -> Rendered.workbook(sheets, UnitSystem.US, Sample.options()));
  }

  @Test
  void valuesKeepTheirKind() {
    Row row = book.getSheet("Shelves").getRow(HEADING_ROW + 2);
    assertEquals(10, row.getCell(1).getNumericCellValue());
    assertEquals(0.74, row.getCell(2).getNumericCellValue());
    assertEquals("0.0", row.getCell(2).getCellStyle().getDataFormatString());
    assertEquals(
        LocalDate.of(2026, 1, 4), row.getCell(6).getLocalDateTimeCellValue().toLocalDate());
    assertEquals("yyyy-mm-dd", row.getCell(6).getCellStyle().getDataFormatString());
    assertEquals("no", row.getCell(7).getStringCellValue());
    Row unknown = book.getSheet("Shelves").getRow(HEADING_ROW + 1);
    assertEquals(CellType.BLANK, unknown.getCell(4).getCellType());
  }

  @Test
  void headingsStayInViewAndAreRepeatedInPrint() {
    XSSFSheet sheet = book.getSheet("Shelves");
    assertEquals(HEADING_ROW + 1, sheet.getPaneInformation().getHorizontalSplitPosition());
    assertEquals(HEADING_ROW, sheet.getRepeatingRows().getFirstRow());
    assertEquals("Shelves!$A$1:$I$47", book.getPrintArea(1).replace("'", ""));
    assertTrue(sheet.getFitToPage());
    assertEquals(1, sheet.getPrintSetup().getFitWidth());
    assertEquals(0, sheet.getPrintSetup().getFitHeight());
    assertTrue(sheet.getPrintSetup().getLandscape());
    assertTrue(sheet.getHeader().getLeft().contains("Store && yard 2026"));
    assertTrue(sheet.getHeader().getRight().contains("2026-03-01"));
    assertTrue(sheet.getFooter().getRight().contains("Page &P of &N"));
  }

  @Test
  void noSheetIsSelected() {
    for (Sheet sheet : book) {
      assertEquals(sheet.getSheetName().equals(Rendered.MINE), sheet.isSelected());
    }
  }

  @Test
  void linksLeadToTheActualNamesAndDatesFollowTheDateSystem() throws IOException {
    RenderOptions renamed =
        new RenderOptions("2026-03-01", "b", "EUR", true, Map.of("Shelves", "Shelves (2)"));
    try (XSSFWorkbook other = read(Sample.sheets(), renamed)) {
      XSSFSheet front = other.getSheet("Front");
      assertTrue(other.isDate1904());
      assertEquals(
          LocalDate.of(2026, 1, 4),
          other
              .getSheet("Shelves (2)")
              .getRow(HEADING_ROW + 2)
              .getCell(6)
              .getLocalDateTimeCellValue()
              .toLocalDate());
      assertNotNull(other.getSheet("Shelves (2)"));
      List<String> places = new ArrayList<>();
      front.getHyperlinkList().forEach(link -> places.add(link.getLocation()));
      assertEquals(List.of("'Shelves (2)'!A12", "'Store'!B7"), places);
      assertEquals(
          "'Store'!B4",
          other
              .getSheet("Shelves (2)")
              .getRow(HEADING_ROW + 1)
              .getCell(0)
              .getHyperlink()
              .getLocation());
    }
  }

  @Test
  void aRowIsFoundBeforeItIsDrawn() {
    ReportSheet sheet = Sample.sheets().get(1);
    Optional<sparewell.finding.Cell> cell = Layout.cellOf(sheet, Sample.TABLE, 12);
    assertEquals(new sparewell.finding.Cell("Shelves", 19, 1), cell.orElseThrow());
    Row row = book.getSheet("Shelves").getRow(18);
    assertEquals(Sample.SHELVES.get(12).name(), row.getCell(0).getStringCellValue());
    ReportSheet charts = Sample.sheets().get(2);
    int first = Layout.cellOf(charts, Sample.RATES, 0).orElseThrow().row();
    assertEquals(
        "Thing number 1",
        book.getSheet("Charts").getRow(first - 1).getCell(0).getStringCellValue());
    assertEquals(Optional.empty(), Layout.cellOf(Sample.sheets().get(4), Sample.CODES, 0));
  }

  @Test
  void oddTextSurvives() throws IOException {
    List<String> odd =
        List.of("_x0041_", "a\nb", "😀 & <b> \"q\" 'a'", " blanks ", "tab\tx", "日本語", "\u0001");
    Table<String> table =
        new Table<>("", "", List.of(Format.TEXT.onSheet("T", "", text -> text)), odd, "");
    List<ReportSheet> sheets =
        List.of(new ReportSheet("It's & odd", "?", List.of(new Block.Rows(table))));
    try (XSSFWorkbook other = read(sheets, Sample.options())) {
      Sheet sheet = other.getSheet("It's & odd");
      for (int i = 0; i < odd.size() - 1; i++) {
        assertEquals(odd.get(i), sheet.getRow(3 + i).getCell(0).getStringCellValue());
      }
      assertEquals("\uFFFD", sheet.getRow(9).getCell(0).getStringCellValue());
    }
  }

  @Test
  void namesOfTablesAndColumnsAreUnique() throws IOException {
    Table<String> twice =
        new Table<>(
            "",
            "",
            List.of(
                Format.TEXT.onSheet("Same", "", text -> text),
                Format.TEXT.onSheet("SAME", "", text -> text)),
            List.of("x"),
            "");
    List<ReportSheet> sheets =
        List.of(new ReportSheet("S", "?", List.of(new Block.Rows(twice), new Block.Rows(twice))));
    try (XSSFWorkbook other = read(sheets, Sample.options())) {
      Set<String> names = new HashSet<>();
      for (XSSFTable table : other.getSheet("S").getTables()) {
        assertTrue(names.add(table.getName()));
        assertEquals("SAME 2", table.getColumns().get(1).getName());
      }
      assertEquals(2, names.size());
    }
  }

  /** The filter's arrow stands beside headings of text; some programs keep its width free. */
  @Test
  void manyColumnsAreNarrowButBreakNoWord() throws IOException {
    List<Column<String>> columns = new ArrayList<>();
    for (String heading : List.of("Style", "Colour", "What to do", "Afterwards", "Reason")) {
      columns.add(Format.TEXT.onSheet(heading, "m", row -> row));
    }
    for (String heading :
        List.of(
            "Aboard",
            "Expected loss",
            "Run-out chance now",
            "Floor",
            "Carry",
            "Bring aboard",
            "A",
            "Buy packs")) {
      columns.add(Format.COUNT.onSheet(heading, "m", row -> row.length()));
    }
    List<String> rows = new ArrayList<>(Collections.nCopies(39, "enough"));
    rows.add("a single value that is far longer than all the others of its column");
    ReportSheet sheet =
        new ReportSheet(
            "Wide", "A", List.of(new Block.Rows(new Table<>("", "T", columns, rows, "none"))));
    try (XSSFWorkbook wide = read(List.of(sheet), Sample.options())) {
      XSSFSheet found = wide.getSheet("Wide");
      double all = 0;
      for (int at = 0; at < columns.size(); at++) {
        double points = found.getColumnWidthInPixels(at) * 0.75;
        all += points;
        for (String word : columns.get(at).heading().split(" ")) {
          double arrow = at < 5 ? 15 : 0;
          double needed = TextSize.width(word, Look.BODY_POINTS, true) + arrow + 4;
          assertTrue(points >= needed, word + ": " + points + " of " + needed);
        }
      }
      assertTrue(found.getRow(3).getHeightInPoints() < 45, "headings of at most three lines");
      String table = found.getTables().get(0).getCTTable().xmlText();
      assertEquals(8, table.split("hiddenButton").length - 1, "no arrow over numbers");
      assertTrue(all < 800, "all of it on a lying sheet of paper at nine tenths: " + all);
      double longest = found.getRow(43).getHeightInPoints();
      assertTrue(longest > 30, "the one long value is wrapped: " + longest);
    }
  }

  @Test
  void linesOfAStepAreSetInWithAllTheirLines() throws IOException {
    String text = "     Beyond the budget: " + "one pack of something; ".repeat(12);
    ReportSheet sheet =
        new ReportSheet("S", "A", List.of(new Block.Text(List.of(Block.Line.of(text)))));
    try (XSSFWorkbook set = read(List.of(sheet), Sample.options())) {
      Cell cell = set.getSheet("S").getRow(2).getCell(0);
      assertEquals(text.stripLeading(), cell.getStringCellValue());
      assertEquals(2, cell.getCellStyle().getIndention());
    }
  }

  @Test
  void aPageThatRunsOverByAFewRowsIsKeptOne() throws IOException {
    for (int rows : List.of(58, 200)) {
      Column<String> column = Format.TEXT.onSheet("C", "m", row -> row);
      Table<String> table =
          new Table<>("", "T", List.of(column), Collections.nCopies(rows, "x"), "none");
      ReportSheet sheet = new ReportSheet("S", "A", List.of(new Block.Rows(table)));
      try (XSSFWorkbook one = read(List.of(sheet), Sample.options())) {
        assertEquals(rows == 58 ? 1 : 0, one.getSheet("S").getPrintSetup().getFitHeight());
      }
    }
  }

  @Test
  void anEmptyTableSaysSo() {
    XSSFSheet front = book.getSheet("Front");
    assertEquals("No shelf needs clearing.", front.getRow(10).getCell(0).getStringCellValue());
    assertTrue(front.getTables().isEmpty());
  }

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
    assertEquals(6, charts.size(), "five panels and a forest");
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
  void aForestNamesItsRowsAndDrawsTheirIntervalsLying() {
    List<XSSFChart> charts = book.getSheet("Forecast").getDrawingPatriarch().getCharts();
    var series = charts.get(5).getCTChart().getPlotArea().getScatterChartArray(0).getSerArray();
    assertEquals(3, series.length, "names, then two series");
    assertEquals(9, series[0].getDLbls().sizeOfDLblArray());
    assertEquals("x", series[1].getErrBarsArray(0).getErrDir().getVal().toString());
    assertEquals("9", series[1].getYVal().getNumRef().getNumCache().getPtArray(8).getV());
  }

  @Test
  void axesHaveNoNeedlessDecimals() {
    List<XSSFChart> charts = book.getSheet("Charts").getDrawingPatriarch().getCharts();
    var rates = charts.get(4).getCTChart().getPlotArea();
    assertEquals("#,##0", rates.getValAxArray(0).getNumFmt().getFormatCode(), "places to 87.5");
    assertEquals("General", rates.getValAxArray(1).getNumFmt().getFormatCode(), "rates to 3.2");
  }

  @Test
  void largePrintIsLarger() {
    XSSFSheet sheet = book.getSheet("Forecast");
    Cell cell = sheet.getRow(4).getCell(0);
    assertEquals(14, book.getFontAt(cell.getCellStyle().getFontIndex()).getFontHeightInPoints());
    assertTrue(sheet.getRow(3).getHeightInPoints() > 20);
  }

  @Test
  void labelsHaveTheirExactSize() {
    XSSFSheet sheet = book.getSheet("Labels");
    // 63 mm and 34 mm at 96 pixels per inch, in whole pixels: 238 and 128.
    assertEquals(238, Math.round(sheet.getColumnWidthInPixels(0)));
    double points = sheet.getRow(2).getHeightInPoints() + sheet.getRow(3).getHeightInPoints();
    assertEquals(128, points / 0.75, 1e-9);
    assertTrue(sheet.getFitToPage(), "the width fits, and what fits is printed at its size");
    assertEquals(0, sheet.getPrintSetup().getFitHeight());
    assertEquals(17, sheet.getRowBreaks()[0], "eight labels of two rows from row 3 on");
  }
}
