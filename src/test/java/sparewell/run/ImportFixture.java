package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;
import sparewell.ooxml.WorkbookPackage;
import sparewell.season.Season;
import sparewell.workbook.Books;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputSheet;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.importing.ImportSource;
import sparewell.workbook.read.SeasonReader;

/** A season's workbook in a folder of its own, into which tests import rows. */
abstract class ImportFixture {
  static final String LOSSES = "Trip,Style,Size,Colour,Lost,Cause\n";
  static final String GREEN_WORM = LOSSES + "T1,Worm,,Green,1,fish\n";
  static final String NO_ROW = "No row of ";
  private static final LocalDateTime NOW = LocalDateTime.of(2026, 6, 30, 20, 15, 0);

  @TempDir Path folder;
  Path book;

  @BeforeEach
  void make() throws IOException {
    folder = folder.toRealPath();
    book = Books.season().write(folder.resolve("season.xlsx"));
  }

  Path csv(String name, String text) throws IOException {
    return Files.write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
  }

  static ImportSource source(InputSheet sheet, Path file) {
    return new ImportSource(sheet, file);
  }

  Outcome take(InputSheet sheet, String text) throws IOException {
    return take(sheet, csv("in.csv", text));
  }

  Outcome take(InputSheet sheet, Path file) {
    return take(source(sheet, file));
  }

  Outcome take(ImportSource... sources) {
    return run(List.of(sources), Optional.empty(), false);
  }

  Outcome take(InputSheet sheet, Path file, DateOrder order) {
    return run(List.of(source(sheet, file)), Optional.of(order), false);
  }

  Outcome dryRun(InputSheet sheet, Path file) {
    return run(List.of(source(sheet, file)), Optional.empty(), true);
  }

  private Outcome run(List<ImportSource> sources, Optional<DateOrder> order, boolean dry) {
    return ImportRun.run(book, sources, order, dry, NOW, 10);
  }

  Season season() throws Exception {
    try (WorkbookPackage opened = WorkbookPackage.open(book)) {
      return SeasonReader.read(opened, ReadOptions.on(LocalDate.of(2026, 7, 15))).season();
    }
  }

  /** Opens what was written with another library. */
  void look(Consumer<XSSFWorkbook> at) throws IOException {
    try (XSSFWorkbook opened =
        new XSSFWorkbook(new ByteArrayInputStream(Files.readAllBytes(book)))) {
      at.accept(opened);
    }
  }

  void remake(Books books) throws IOException {
    Files.delete(book);
    book = books.write(folder.resolve("season.xlsx"));
  }

  static void ok(Outcome outcome) {
    assertEquals(List.of(), outcome.problems());
    assertEquals(ExitCode.DONE, outcome.exitCode());
  }

  void refused(Outcome outcome, String... because) throws IOException {
    assertEquals(ExitCode.REFUSED, outcome.exitCode());
    String all = String.join("\n", outcome.problems());
    for (String part : because) {
      assertTrue(all.contains(part), all);
    }
    assertFalse(Command.names(folder).contains("season-backups"), "nothing was written");
  }
}
