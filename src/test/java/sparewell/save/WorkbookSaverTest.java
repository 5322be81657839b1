package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipFile;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.Zips;

/** Saves of our sheets into a workbook. */
class WorkbookSaverTest {
  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void make() throws Exception {
    book = Files.write(folder.resolve("season.xlsx"), Zips.ordinary("Stock", "Trips"));
  }

  private static List<String> names(Path file) throws Exception {
    try (WorkbookPackage opened = WorkbookPackage.open(file)) {
      return opened.sheets().stream().map(SheetEntry::name).toList();
    }
  }

  @Test
  void putsOurSheetsInFrontAndBehindAndKeepsABackup() throws Exception {
    byte[] before = Files.readAllBytes(book);
    Optional<Path> result = Saving.into(book);
    assertEquals(List.of("After trip", "Stock", "Trips", "Spares", "Buy list"), names(book));
    assertEquals(
        folder.resolve("season-backups/season 2026-03-08 173005.xlsx").toRealPath(),
        result.orElseThrow());
    assertArrayEquals(before, Files.readAllBytes(result.get()));
    assertEquals(List.of("season-backups", "season.xlsx"), Command.names(folder));
  }

  @Test
  void aSecondRunGivesTheSameBytes() throws Exception {
    Saving.into(book);
    byte[] first = Files.readAllBytes(book);
    Saving.into(book);
    assertArrayEquals(first, Files.readAllBytes(book));
  }

  @Test
  void aSheetThatWouldHideOneOfTheAnglersIsNotWritten() throws Exception {
    byte[] before = Files.readAllBytes(book);
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      OwnParts parts = OwnParts.of(original, List.of(new OwnSheet("stock", false)));
      String part = parts.takePart("worksheets/", "sheet", ".xml");
      parts.write(part, "application/xml", out -> out.write(Zips.utf8("<worksheet/>")));
      parts.sheet("stock", part, List.of());
      WorkbookRefused refused =
          assertThrows(
              WorkbookRefused.class,
              () -> WorkbookSaver.save(parts, original, book, Saving.NOW, 10, false));
      assertTrue(refused.problem().contains("comparison"), refused.problem());
    }
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(List.of("season.xlsx"), Command.names(folder));
  }

  /** The clock of a run is in no entry: a second run gives the same bytes at any time. */
  @Test
  void entriesOfOursBearOneFixedTime() throws Exception {
    Saving.into(book);
    try (ZipFile zip = new ZipFile(book.toFile())) {
      for (String entry : List.of("xl/workbook.xml", "xl/worksheets/sparewell_sheet1.xml")) {
        assertEquals(LocalDateTime.of(1980, 1, 1, 0, 0), zip.getEntry(entry).getTimeLocal());
      }
    }
  }

  @Test
  void ourCellsReadBackAsTheyWereMade() throws Exception {
    Saving.into(book);
    try (InputStream in = Files.newInputStream(book);
        XSSFWorkbook opened = new XSSFWorkbook(in)) {
      var sheet = opened.getSheet("Spares");
      assertEquals("What to <carry> & why", sheet.getRow(0).getCell(0).getStringCellValue());
      assertEquals("=1+1", sheet.getRow(3).getCell(0).getStringCellValue());
      assertEquals("  two blanks  ", sheet.getRow(4).getCell(0).getStringCellValue());
      assertEquals("line one\nline two", sheet.getRow(5).getCell(0).getStringCellValue());
      assertEquals("0.00", sheet.getRow(4).getCell(2).getCellStyle().getDataFormatString());
      assertEquals("yyyy-mm-dd", sheet.getRow(3).getCell(5).getCellStyle().getDataFormatString());
      assertEquals("SUBTOTAL(109,B4:B6)", sheet.getRow(6).getCell(1).getCellFormula());
      assertEquals(33, sheet.getRow(6).getCell(1).getNumericCellValue());
      assertEquals(1, sheet.getDrawingPatriarch().getCharts().size());
      assertEquals(
          "a note", sheet.getCellComments().values().iterator().next().getString().getString());
      assertEquals("A3:F7", sheet.getTables().get(0).getArea().formatAsString());
      String printed = opened.getPrintArea(opened.getSheetIndex(sheet));
      assertTrue(printed.startsWith("'Spares'!$A$1:"), printed);
      assertTrue(sheet.getRow(2).getCell(0).getCellStyle().getFont().getBold());
      assertEquals("in Stock", opened.getSheet("Stock").getRow(0).getCell(0).getStringCellValue());
      assertEquals("Stock", opened.getSheetName(opened.getActiveSheetIndex()));
      for (int i = 0; i < opened.getNumberOfSheets(); i++) {
        assertEquals(opened.getSheetName(i).equals("Stock"), opened.getSheetAt(i).isSelected());
      }
    }
  }
}
