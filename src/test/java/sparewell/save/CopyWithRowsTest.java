package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.ooxml.NewCell;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.Zips;
import sparewell.render.RenderOptions;
import sparewell.render.SheetRenderer;
import sparewell.save.append.AppendRequest;
import sparewell.units.UnitSystem;

/** Rows of the angler's sheets and our sheets change in one step. */
class CopyWithRowsTest {
  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void make() throws Exception {
    book = Files.write(folder.resolve("season.xlsx"), Zips.ordinary("Stock", "Trips"));
  }

  private static void copy(WorkbookPackage original, Path copy) throws WorkbookRefused {
    SheetEntry sheet = original.sheets().get(0);
    NewCell cell = new NewCell(1, NewCell.Kind.TEXT, "new", 0);
    NewRows rows = new NewRows(sheet, 1, 1, 1, 1, 1, List.of(List.of(cell)));
    WorkbookSaver.copyWithRows(
        new AppendRequest(original, List.of(rows), index -> false, written -> true, Saving.NOW, 10),
        copy);
  }

  private static Optional<Path> save(WorkbookPackage original, WorkbookPackage copy)
      throws WorkbookRefused {
    List<OwnSheet> sheets = List.of(new OwnSheet("Spares", false));
    OwnParts parts = OwnParts.of(copy, sheets);
    SheetRenderer.render(
        OwnSample.sheets(List.of("Spares"), "x"),
        UnitSystem.US,
        new RenderOptions("2026-03-08", "Season", "USD", false, Map.of()),
        parts,
        Runnable::run);
    return WorkbookSaver.save(parts, original, original.file(), Saving.NOW, 10, false);
  }

  @Test
  void rowsAndSheetsReplaceTheWorkbookTogether() throws Exception {
    byte[] before = Files.readAllBytes(book);
    Path temporary = folder.resolve("copy.xlsx");
    Optional<Path> result;
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      copy(original, temporary);
      assertArrayEquals(before, Files.readAllBytes(book), "nothing yet");
      try (WorkbookPackage copy = WorkbookPackage.open(temporary)) {
        result = save(original, copy);
      }
    }
    assertArrayEquals(before, Files.readAllBytes(result.orElseThrow()));
    try (XSSFWorkbook opened = new XSSFWorkbook(Files.newInputStream(book))) {
      assertEquals("in Stock", opened.getSheet("Stock").getRow(0).getCell(0).getStringCellValue());
      assertEquals("new", opened.getSheet("Stock").getRow(1).getCell(0).getStringCellValue());
      assertEquals("=1+1", opened.getSheet("Spares").getRow(3).getCell(0).getStringCellValue());
    }
  }

  @Test
  void aWorkbookThatChangedMeanwhileIsNotReplaced() throws Exception {
    Path temporary = folder.resolve("copy.xlsx");
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      copy(original, temporary);
      byte[] changed = Zips.ordinary("Stock", "Trips", "More");
      Files.write(book, changed);
      try (WorkbookPackage copy = WorkbookPackage.open(temporary)) {
        assertThrows(WorkbookRefused.class, () -> save(original, copy));
      }
      assertArrayEquals(changed, Files.readAllBytes(book));
    }
  }
}
