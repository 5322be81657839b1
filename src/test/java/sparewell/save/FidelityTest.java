package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.Zips;

/** Nothing of the angler's changes, whichever program made the workbook. */
class FidelityTest {
  @TempDir private Path folder;

  static Stream<String> workbooks() {
    return Workbooks.NAMES.stream();
  }

  private Path copy(String name) throws IOException {
    return Files.write(folder.resolve(name), Workbooks.bytes(name));
  }

  private static List<String> own(Path file) throws Exception {
    try (WorkbookPackage book = WorkbookPackage.open(file)) {
      return book.sheets().stream().filter(SheetEntry::own).map(SheetEntry::name).toList();
    }
  }

  @ParameterizedTest
  @MethodSource("workbooks")
  void nothingOfTheAnglersDiffers(String name) throws Exception {
    Path book = copy(name);
    byte[] before = Files.readAllBytes(book);
    Saving.into(book);
    byte[] first = Files.readAllBytes(book);
    assertEquals(3, own(book).size());
    assertEquals(List.of(), PartComparison.differences(before, first, own(book)));
    Saving.into(book);
    assertArrayEquals(first, Files.readAllBytes(book), "a second run changes nothing");
  }

  @ParameterizedTest
  @MethodSource("workbooks")
  void opensInPoiWithOurSheetsAndTheirs(String name) throws Exception {
    assumeTrue(!name.equals("odd.xlsx"), "the library cannot read that one before the run either");
    Path book = copy(name);
    Saving.into(book);
    try (InputStream in = Files.newInputStream(book);
        XSSFWorkbook opened = new XSSFWorkbook(in)) {
      assertEquals("After trip", opened.getSheetName(0));
      assertEquals(
          "What to <carry> & why", opened.getSheetAt(0).getRow(0).getCell(0).getStringCellValue());
    }
  }

  @Test
  void sheetsThatLeaveTakeTheirPartsAlong() throws Exception {
    Path book = copy("office.xlsx");
    byte[] before = Files.readAllBytes(book);
    Saving.into(book);
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      Saving.save(original, book, OwnSample.sheets(List.of("Labels"), "x"), 0, Saving.NOW);
    }
    assertEquals(List.of("Labels"), own(book));
    assertEquals(
        List.of(), PartComparison.differences(before, Files.readAllBytes(book), List.of("Labels")));
    long ours =
        Zips.read(Files.readAllBytes(book)).keySet().stream()
            .filter(n -> n.startsWith("xl/worksheets/sparewell_"))
            .count();
    assertEquals(1, ours);
  }

  @Test
  void formulasThatReadOurSheetsGoOnWorking() throws Exception {
    Path book = copy("openpyxl.xlsx");
    Saving.into(book);
    Saving.into(book);
    assertTrue(
        Zips.text(Zips.read(Files.readAllBytes(book)), "xl/workbook.xml")
            .contains("fullCalcOnLoad=\"1\""));
    try (InputStream in = Files.newInputStream(book);
        XSSFWorkbook opened = new XSSFWorkbook(in)) {
      FormulaEvaluator evaluator = opened.getCreationHelper().createFormulaEvaluator();
      var stock = opened.getSheet("Stock");
      // ='Buy list'!B5 in the angler's sheet; OwnWorkbook writes 10 * 2 + 1 there
      assertEquals(21, evaluator.evaluate(stock.getRow(1).getCell(4)).getNumberValue());
      assertEquals("mine", evaluator.evaluate(stock.getRow(2).getCell(4)).getStringValue());
    }
  }

  @Test
  void noFullCalculationWhereNothingReadsOurSheets() throws Exception {
    Path book = Files.write(folder.resolve("plain.xlsx"), Zips.ordinary("Stock"));
    Saving.into(book);
    assertFalse(
        Zips.text(Zips.read(Files.readAllBytes(book)), "xl/workbook.xml")
            .contains("fullCalcOnLoad"));
  }

  @Test
  void aSheetOfTheAnglersWithOurNameIsLeftAlone() throws Exception {
    Path book = copy("openpyxl.xlsx"); // has a sheet "spares"
    Saving.into(book);
    assertEquals(List.of("After trip", "Spares (2)", "Buy list"), own(book));
    Path second =
        Files.write(folder.resolve("two.xlsx"), Zips.ordinary("Spares", "SPARES (2)", "Buy list"));
    Saving.into(second);
    assertEquals(List.of("After trip", "Spares (3)", "Buy list (2)"), own(second));
  }

  @Test
  void ourDatesAreTheSameDaysWhereDaysCountFrom1904() throws Exception {
    for (String name : List.of("openpyxl.xlsx", "poi.xlsx")) { // the first counts from 1904
      Path book = copy(name);
      Saving.into(book);
      try (InputStream in = Files.newInputStream(book);
          XSSFWorkbook opened = new XSSFWorkbook(in)) {
        assertEquals(name.equals("openpyxl.xlsx"), opened.isDate1904());
        assertEquals(
            java.time.LocalDate.of(2026, 3, 8),
            opened.getSheetAt(0).getRow(3).getCell(5).getLocalDateTimeCellValue().toLocalDate());
        assertEquals(
            11, opened.getSheet("Buy list").getRow(4).getCell(1).getNumericCellValue() - 10);
      }
    }
  }

  @Test
  void tableIdsAndNamesStayUnique() throws Exception {
    Path book = copy("openpyxl.xlsx"); // has a table Own_1 with id 1
    Saving.into(book);
    List<String> seen = new ArrayList<>();
    for (Map.Entry<String, byte[]> part : Zips.read(Files.readAllBytes(book)).entrySet()) {
      if (part.getKey().startsWith("xl/tables/")) {
        String xml = Zips.text(Map.of("t", part.getValue()), "t");
        seen.add(xml.replaceAll("(?s).*<table [^>]*?\\bid=\"(\\d+)\".*", "$1"));
        seen.add(xml.replaceAll("(?s).*displayName=\"([^\"]+)\".*", "$1"));
      }
    }
    assertEquals(8, seen.size());
    assertEquals(8, seen.stream().distinct().count(), seen.toString());
  }

  @Test
  void aCopyOfOurSheetIsTheAnglers() throws Exception {
    Path book = copy("xlsxwriter.xlsx");
    Saving.into(book);
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    Zips.edit(parts, "xl/workbook.xml", "name=\"Spares\"", "name=\"Spares in March\"");
    Files.write(book, Zips.write(parts));
    byte[] renamed = parts.get("xl/worksheets/sparewell_sheet2.xml");
    Saving.into(book);
    assertEquals(List.of("After trip", "Buy list", "Spares"), own(book));
    assertArrayEquals(
        renamed, Zips.read(Files.readAllBytes(book)).get("xl/worksheets/sparewell_sheet2.xml"));
  }

  @Test
  void opensInLibreOfficeAndOpenpyxlAndSurvivesBeingSavedThere() throws Exception {
    assumeTrue(Programs.has("soffice"), "LibreOffice is not installed");
    Path saved = Files.createDirectory(folder.resolve("saved"));
    List<String> command =
        new ArrayList<>(
            List.of(
                "soffice",
                "--headless",
                "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                "--convert-to",
                "xlsx",
                "--outdir",
                saved.toString()));
    List<String> names =
        List.of("xlsxwriter.xlsx", "openpyxl.xlsx", "libreoffice-pivot.xlsx", "office.xlsx");
    for (String name : names) {
      Path book = copy(name);
      Saving.into(book);
      command.add(book.toString());
    }
    assertEquals(0, Programs.run(folder, 5, TimeUnit.MINUTES, command));
    for (String name : names) {
      Path back = saved.resolve(name);
      assertEquals(own(folder.resolve(name)), own(back), name + " lost our marker");
      int sheets;
      try (WorkbookPackage book = WorkbookPackage.open(back)) {
        sheets = book.sheets().size();
      }
      Saving.into(back);
      try (WorkbookPackage book = WorkbookPackage.open(back)) {
        assertEquals(sheets, book.sheets().size(), name + " has a sheet twice");
      }
    }
  }

  @Test
  void opensInOpenpyxl() throws Exception {
    assumeTrue(Programs.hasPythonModule("openpyxl"), "openpyxl is not installed");
    String script =
        "import openpyxl,sys,warnings\nwarnings.simplefilter('ignore')\n"
            + "for f in sys.argv[1:]:\n"
            + "  b=openpyxl.load_workbook(f)\n"
            + "  s=b[b.sheetnames[0]]\n"
            + "  assert s['A4'].value=='=1+1' and s['A4'].data_type=='s', (f, s['A4'].value)\n"
            + "  assert s['B5'].value==1, f";
    List<String> command = new ArrayList<>(List.of(Programs.PYTHON, "-c", script));
    for (String name : Workbooks.NAMES) {
      if (!name.equals("odd.xlsx")) { // before the run it already misses the oddly named sheet
        Path book = copy(name);
        Saving.into(book);
        command.add(book.toString());
      }
    }
    assertEquals(0, Programs.run(folder, 2, TimeUnit.MINUTES, command));
  }
}
