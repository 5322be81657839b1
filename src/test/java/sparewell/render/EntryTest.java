package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint.ValidationType;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xssf.usermodel.extensions.XSSFCellBorder.BorderSide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.save.Programs;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Entry;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** Cells of our sheets that the angler types into, as other readers find them. */
class EntryTest {
  /** A thing to do, and what was typed about it. */
  private record Thing(String name, int pieces, Object done) {}

  private static final Entry DONE = Entry.anything("Type yes, or how many.", "yes");

  private static final List<Column<Thing>> COLUMNS =
      List.of(
          Format.TEXT.column("thing", "Thing", "Its name.", Thing::name),
          Column.<Thing>entry("Used", "Pieces used.", Entry.whole(0, 12, "Count."))
              .entered(
                  thing ->
                      thing.pieces() == 0
                          ? Optional.empty()
                          : Optional.of(Entry.whole(0, thing.pieces(), "Count."))),
          Column.<Thing>entry("Done", "What was done.", DONE).valued(Thing::done));

  private static final Table<Thing> TABLE =
      new Table<>(
          "things.csv",
          "",
          COLUMNS,
          List.of(
              new Thing("one", 3, Optional.empty()),
              new Thing("two", 3, "yes"),
              new Thing("three", 5, 2.5),
              new Thing("four", 0, Optional.of("x"))),
          "");

  private static final Block.Form FORM =
      new Block.Form(
          List.of(
              new Block.Field("Hours", Entry.number(0, 99, "Hours."), Optional.of(6.25)),
              new Block.Field(
                  "Cover", Entry.anything("", "rock, flat", "\"weed\""), Optional.empty()),
              new Block.Field("Kind", Entry.anything("", "a", "\"b\""), Optional.empty()),
              new Block.Field(
                  "Day", Entry.date("The day."), Optional.of(LocalDate.of(2026, 3, 8)))));

  private static Path written(Path folder) throws IOException {
    ReportSheet sheet = new ReportSheet("Card", "Do", List.of(FORM, new Block.Rows(TABLE)));
    Path file = folder.resolve("card.xlsx");
    Rendered.into(file, List.of(sheet), UnitSystem.US, Sample.options());
    return file;
  }

  /** The rules of a sheet by their cells. */
  private static Map<String, DataValidation> rules(XSSFSheet sheet) {
    Map<String, DataValidation> rules = new TreeMap<>();
    for (DataValidation rule : sheet.getDataValidations()) {
      for (CellRangeAddress area : rule.getRegions().getCellRangeAddresses()) {
        rules.put(area.formatAsString(), rule);
      }
    }
    return rules;
  }

  private static void holds(Path file) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
      XSSFSheet sheet = book.getSheet("Card");
      assertEquals("Hours", sheet.getRow(2).getCell(0).getStringCellValue());
      assertEquals(6.25, sheet.getRow(2).getCell(1).getNumericCellValue());
      Cell day = sheet.getRow(5).getCell(1);
      assertEquals(LocalDate.of(2026, 3, 8), day.getLocalDateTimeCellValue().toLocalDate());
      assertEquals("Done", sheet.getRow(7).getCell(2).getStringCellValue());
      assertEquals(CellType.BLANK, sheet.getRow(8).getCell(2).getCellType());
      assertEquals("yes", sheet.getRow(9).getCell(2).getStringCellValue());
      assertEquals(2.5, sheet.getRow(10).getCell(2).getNumericCellValue());
      assertEquals("General", sheet.getRow(10).getCell(2).getCellStyle().getDataFormatString());
      assertEquals("x", sheet.getRow(11).getCell(2).getStringCellValue());
      Cell empty = sheet.getRow(8).getCell(2);
      assertFalse(empty.getCellStyle().getLocked());
      // The border itself, as not every program writes that it applies.
      int border = (int) ((XSSFCellStyle) empty.getCellStyle()).getCoreXf().getBorderId();
      assertEquals(
          BorderStyle.THIN,
          book.getStylesSource().getBorderAt(border).getBorderStyle(BorderSide.LEFT));
      assertTrue(sheet.getRow(8).getCell(0).getCellStyle().getLocked());
    }
  }

  @Test
  void cellsHoldWhatWasTypedAndRulesSayWhatMayBe(@TempDir Path folder) throws IOException {
    Path file = written(folder);
    holds(file);
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
      Map<String, DataValidation> rules = rules(book.getSheet("Card"));
      DataValidation done = rules.get("C9:C12");
      assertEquals(ValidationType.LIST, done.getValidationConstraint().getValidationType());
      assertEquals(List.of("yes"), List.of(done.getValidationConstraint().getExplicitListValues()));
      assertFalse(done.getShowErrorBox(), "a count may be typed too");
      assertEquals("Type yes, or how many.", done.getPromptBoxText());
      DataValidation used = rules.get("B9:B10");
      assertEquals(ValidationType.INTEGER, used.getValidationConstraint().getValidationType());
      assertEquals("3", used.getValidationConstraint().getFormula2());
      assertTrue(used.getShowErrorBox());
      assertEquals("5", rules.get("B11").getValidationConstraint().getFormula2());
      assertFalse(rules.containsKey("B12"), "nothing to type where there are no pieces");
      assertEquals(
          ValidationType.DECIMAL, rules.get("B3").getValidationConstraint().getValidationType());
      assertEquals(
          ValidationType.ANY, rules.get("B4").getValidationConstraint().getValidationType());
      assertEquals("\"a,\"\"b\"\"\"", rules.get("B5").getValidationConstraint().getFormula1());
      assertEquals(
          ValidationType.DATE, rules.get("B6").getValidationConstraint().getValidationType());
    }
  }

  @Test
  void theCsvLeavesThemOut() {
    assertEquals(
        "thing\r\none\r\ntwo\r\nthree\r\nfour\r\n", CsvRenderer.text(TABLE, UnitSystem.US));
  }

  @Test
  void aReSaveInAnotherProgramKeepsThem(@TempDir Path folder) throws IOException {
    assumeTrue(Programs.has("libreoffice"), "no libreoffice");
    Path file = written(folder);
    Path out = folder.resolve("out");
    String profile = "-env:UserInstallation=" + folder.resolve("profile").toUri();
    List<String> convert =
        List.of("libreoffice", profile, "--headless", "--convert-to", "xlsx", "--outdir");
    List<String> command = new java.util.ArrayList<>(convert);
    command.addAll(List.of(out.toString(), file.toString()));
    assertEquals(0, Programs.run(folder, 2, TimeUnit.MINUTES, command));
    holds(out.resolve("card.xlsx"));
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(out.resolve("card.xlsx")))) {
      assertEquals(
          ValidationType.LIST,
          rules(book.getSheet("Card")).get("C9:C12").getValidationConstraint().getValidationType());
    }
  }

  @Test
  void openpyxlKeepsThem(@TempDir Path folder) throws IOException {
    assumeTrue(Programs.hasPythonModule("openpyxl"), "no openpyxl");
    Path file = written(folder);
    String resave = "import sys, openpyxl; openpyxl.load_workbook(sys.argv[1]).save(sys.argv[1])";
    List<String> command = List.of(Programs.PYTHON, "-c", resave, file.toString());
    assertEquals(0, Programs.run(folder, 1, TimeUnit.MINUTES, command));
    holds(file);
  }
}
