package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/** Layout of written sheets on screen and page. */
class SheetLayoutTest extends SampleBookFixture {
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
  void printEndsWhereNothingHasToBeDone() throws IOException {
    Column<String> column = Format.TEXT.onSheet("C", "m", row -> row);
    Table<String> table = new Table<>("", "T", List.of(column), List.of("a", "b", "c"), "none");
    Block text = new Block.Text(List.of(Block.Line.of("x")));
    List<ReportSheet> sheets =
        List.of(
            new ReportSheet("S", "A", List.of(new Block.Rows(table, "", 2), text)),
            new ReportSheet("T", "A", List.of(text, new Block.EndOfPrint(), text)));
    try (XSSFWorkbook cut = read(sheets, Sample.options())) {
      assertTrue(cut.getPrintArea(cut.getSheetIndex("S")).endsWith("$6"), "title, heading, a, b");
      assertTrue(cut.getPrintArea(cut.getSheetIndex("T")).endsWith("$3"));
    }
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
