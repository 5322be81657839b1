package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
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
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** Sheets as another reader, Apache POI 5.5.1, finds them. */
class SheetRendererTest extends SampleBookFixture {
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

  /** Boxes come in another order once they were moved; their tables keep their names. */
  @Test
  void ofTablesForEachBoxEachIsNamedByItsBox() throws IOException {
    assertEquals(List.of("sw_s_j1", "sw_s_crank_box"), namesAbout("J1", "Crank box"));
    assertEquals(List.of("sw_s_crank_box", "sw_s_j1"), namesAbout("Crank box", "J1"));
  }

  private static List<String> namesAbout(String... boxes) throws IOException {
    List<Column<String>> columns = List.of(Format.TEXT.onSheet("T", "", text -> text));
    List<Block> blocks = new ArrayList<>();
    for (String box : boxes) {
      blocks.add(new Block.Rows(new Table<>("", "", columns, List.of("x"), ""), box, 1));
    }
    return namesOf(blocks);
  }

  private static List<String> tableNames(String... titles) throws IOException {
    List<Column<String>> columns = List.of(Format.TEXT.onSheet("T", "", text -> text));
    List<Block> blocks = new ArrayList<>();
    for (String title : titles) {
      blocks.add(new Block.Rows(new Table<>("", title, columns, List.of("x"), "")));
    }
    blocks.add(new Block.Rows(new Table<>("b.csv", titles[0], columns, List.of("x"), "")));
    return namesOf(blocks);
  }

  private static List<String> namesOf(List<Block> blocks) throws IOException {
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

  @Test
  void anEmptyTableSaysSo() {
    XSSFSheet front = book.getSheet("Front");
    assertEquals("No shelf needs clearing.", front.getRow(10).getCell(0).getStringCellValue());
    assertTrue(front.getTables().isEmpty());
  }
}
