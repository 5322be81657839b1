package sparewell.workbook.template;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint.ValidationType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFDataValidation;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.FieldSource;
import sparewell.finding.Finding;
import sparewell.ooxml.WorkbookPackage;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputColumn.Kind;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.read.ReadResult;
import sparewell.workbook.read.SeasonReader;
import sparewell.workbook.template.GenerateTemplates.Kept;

class TemplateWriterTest {
  static final List<Kept> ALL = GenerateTemplates.ALL;
  private static final Map<String, byte[]> MADE = new TreeMap<>();

  @BeforeAll
  static void make() throws IOException {
    for (Kept kept : ALL) {
      MADE.put(kept.fileName(), kept.maker().bytes());
    }
  }

  private static byte[] made(UnitSystem units, TemplateKind kind) {
    boolean us = units == UnitSystem.US;
    return MADE.get(
        switch (kind) {
          case BLANK -> us ? "blank-us.xlsx" : "blank-metric.xlsx";
          case DEMO -> us ? "demo.xlsx" : "demo-metric.xlsx";
          case MESSY -> "messy-demo.xlsx";
        });
  }

  @TempDir Path folder;

  @ParameterizedTest
  @FieldSource("ALL")
  void theKeptFilesAreWhatTheCodeMakes(Kept kept) throws IOException {
    byte[] file = Files.readAllBytes(Path.of("workbook-templates", kept.fileName()));
    Map<String, String> there = parts(file);
    Map<String, String> made = parts(MADE.get(kept.fileName()));
    assertEquals(made.keySet(), there.keySet());
    made.forEach(
        (part, text) ->
            assertEquals(
                text,
                there.get(part),
                kept.fileName() + ": " + part + "; run mvn -q -Ptemplates test-compile"));
  }

  @ParameterizedTest
  @FieldSource("ALL")
  void theSameCallGivesTheSameBytes(Kept kept) throws IOException {
    assertArrayEquals(MADE.get(kept.fileName()), kept.maker().bytes());
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void everyDeclaredColumnIsThereWithItsUnitAndNote(UnitSystem units) throws IOException {
    try (XSSFWorkbook book = open(made(units, TemplateKind.BLANK))) {
      assertEquals("Read me first", book.getSheetName(0));
      for (InputSheet form : InputSheets.ALL) {
        XSSFSheet sheet = book.getSheet(form.name());
        assertEquals(1, sheet.getPaneInformation().getHorizontalSplitPosition(), form.name());
        assertEquals(1, sheet.getTables().size(), form.name());
        for (int c = 0; c < form.columns().size(); c++) {
          InputColumn column = form.columns().get(c);
          Cell cell = sheet.getRow(0).getCell(c);
          assertEquals(SheetWriter.header(form, column, units), cell.getStringCellValue());
          String note = cell.getCellComment().getString().getString();
          assertTrue(note.contains(column.meaning()), note);
          assertTrue(note.contains(column.standard()), note);
        }
      }
      String weight = units == UnitSystem.US ? "Weight each (oz)" : "Weight each (g)";
      assertEquals(weight, book.getSheet("Styles").getRow(0).getCell(2).getStringCellValue());
      String far = units == UnitSystem.US ? "From transom (in)" : "From transom (cm)";
      assertEquals(far, book.getSheet("Compartments").getRow(0).getCell(1).getStringCellValue());
    }
  }

  @ParameterizedTest
  @EnumSource(TemplateKind.class)
  void dropdownsPointAtListsThatExistAndOnlyWarn(TemplateKind kind) throws IOException {
    try (XSSFWorkbook book = open(made(UnitSystem.US, kind))) {
      Set<String> lists = new TreeSet<>();
      for (int i = 0; i < book.getNumberOfSheets(); i++) {
        for (XSSFDataValidation rule : book.getSheetAt(i).getDataValidations()) {
          assertTrue(rule.getShowPromptBox());
          int type = rule.getValidationConstraint().getValidationType();
          if (type != ValidationType.ANY) {
            assertEquals(DataValidation.ErrorStyle.WARNING, rule.getErrorStyle());
          }
          String[] words = rule.getValidationConstraint().getExplicitListValues();
          if (type == ValidationType.LIST && words == null) {
            lists.add(rule.getValidationConstraint().getFormula1());
          } else if (words != null) {
            assertTrue(String.join(",", words).length() < 255);
          }
        }
      }
      assertEquals(
          Set.of("BoxList", "CompartmentList", "EventList", "PlaceList", "StyleList", "TripList"),
          lists);
      lists.forEach(
          list -> {
            String target = book.getName(list).getRefersToFormula();
            assertFalse(target.contains("#REF"), target);
          });
    }
  }

  @Test
  void everyColumnThatRefersToASheetHasADropdown() throws IOException {
    try (XSSFWorkbook book = open(made(UnitSystem.US, TemplateKind.BLANK))) {
      for (InputSheet form : InputSheets.ALL) {
        for (int c = 0; c < form.columns().size(); c++) {
          InputColumn column = form.columns().get(c);
          int at = c;
          boolean list =
              book.getSheet(form.name()).getDataValidations().stream()
                  .filter(rule -> rule.getRegions().getCellRangeAddress(0).isInRange(1, at))
                  .anyMatch(
                      rule ->
                          rule.getValidationConstraint().getValidationType()
                              == ValidationType.LIST);
          boolean wanted =
              !column.refersTo().isEmpty()
                  || column.kind() == Kind.CHOICE
                  || column.kind() == Kind.YES_NO;
          if (column.kind() != Kind.BY_ROW) {
            assertEquals(wanted, list, form.name() + " " + column.name());
          }
        }
      }
    }
  }

  @Test
  void weightsKeepFractionsAndSizesStayText() throws IOException {
    try (XSSFWorkbook book = open(made(UnitSystem.US, TemplateKind.BLANK))) {
      XSSFSheet styles = book.getSheet("Styles");
      XSSFSheet stock = book.getSheet("Stock");
      assertEquals("# ??/??", styles.getColumnStyle(2).getDataFormatString());
      assertEquals("@", stock.getColumnStyle(1).getDataFormatString());
      assertEquals("yyyy-mm-dd", stock.getColumnStyle(8).getDataFormatString());
    }
  }

  @Test
  void rowsOfBlankBooksAreMarkedAsExamplesAndIgnored() throws Exception {
    Path file = folder.resolve("blank.xlsx");
    Files.write(file, made(UnitSystem.METRIC, TemplateKind.BLANK));
    try (XSSFWorkbook book = open(Files.readAllBytes(file))) {
      for (InputSheet form : InputSheets.ALL) {
        if (form == InputSheets.SETTINGS || form == InputSheets.BOAT) {
          continue;
        }
        XSSFSheet sheet = book.getSheet(form.name());
        assertTrue(sheet.getLastRowNum() >= 1, form.name());
        for (int r = 1; r <= sheet.getLastRowNum(); r++) {
          Row row = sheet.getRow(r);
          assertTrue(row.getCell(0).getStringCellValue().startsWith("Example:"), form.name());
        }
      }
    }
    ReadResult result = read(file);
    assertTrue(result.season().styles().isEmpty());
    assertTrue(result.season().losses().isEmpty());
    assertEquals(UnitSystem.METRIC, result.season().settings().units());
    assertEquals(Set.of("I-071"), ids(result), "only that sheets have no rows yet");
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void theDemoReadsWithoutAFinding(UnitSystem units) throws Exception {
    Path file = folder.resolve("demo.xlsx");
    Files.write(file, made(units, TemplateKind.DEMO));
    ReadResult result = read(file);
    assertEquals(List.of(), result.findings().stream().map(Finding::message).toList());
    assertEquals(30, result.season().styles().size());
    assertEquals(250, result.season().losses().size());
    assertEquals(6, result.season().events().size());
    assertEquals(LocalDate.parse("2026-03-15"), result.season().settings().asOf());
  }

  @Test
  void theMessyDemoShowsEveryKindOfReadingFindingItCan() throws Exception {
    Path file = folder.resolve("messy.xlsx");
    Files.write(file, made(UnitSystem.US, TemplateKind.MESSY));
    Set<String> seen = ids(read(file));
    List<String> wanted = new ArrayList<>();
    for (sparewell.finding.Code code : sparewell.finding.Code.values()) {
      if (code.id().startsWith("I-0") && !NOT_IN_MESSY.contains(code.id())) {
        wanted.add(code.id());
      }
    }
    wanted.removeAll(seen);
    assertEquals(List.of(), wanted);
  }

  /**
   * A damaged cell would make spreadsheet programs ask for a repair; a sheet without headings,
   * which would cost the demo a plan; a chance from the command line; a required sheet without
   * rows; and many notes.
   */
  private static final Set<String> NOT_IN_MESSY =
      Set.of("I-004", "I-053", "I-057", "I-071", "I-076");

  private static XSSFWorkbook open(byte[] bytes) throws IOException {
    try (InputStream in = new ByteArrayInputStream(bytes)) {
      return new XSSFWorkbook(in);
    }
  }

  private static ReadResult read(Path file) throws Exception {
    try (WorkbookPackage book = WorkbookPackage.open(file)) {
      return SeasonReader.read(book, ReadOptions.on(LocalDate.parse("2026-03-20")));
    }
  }

  private static Set<String> ids(ReadResult result) {
    Set<String> ids = new TreeSet<>();
    result.findings().forEach(finding -> ids.add(finding.code().id()));
    return ids;
  }

  private static Map<String, String> parts(byte[] zip) throws IOException {
    Map<String, String> parts = new TreeMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        parts.put(entry.getName(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    return parts;
  }
}
