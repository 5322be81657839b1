package sparewell.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.experience.Club;
import sparewell.experience.Entry;
import sparewell.experience.Pool;
import sparewell.experience.Unit;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.render.RenderOptions;
import sparewell.render.SheetRenderer;
import sparewell.save.OwnParts;
import sparewell.save.WorkbookSaver;
import sparewell.sheet.ClubSheet;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** The workbook of a club: rates by style over all its logs. */
public final class ClubReport {
  private ClubReport() {}

  /** Writes a new workbook, or our sheets in the one that stands there, after a backup. */
  public static Outcome write(Path file, List<Entry> rows, LocalDateTime now) {
    Pool pool = Pool.of(rows);
    List<ReportSheet> sheets =
        Arrays.stream(Unit.values())
            .filter(unit -> unit != Unit.TIMES)
            .flatMap(unit -> Club.of(pool, unit).stream())
            .map(ClubSheet::of)
            .toList();
    if (sheets.isEmpty()) {
      return refused(file, "No log has a rate yet, so that " + file + " was not written.");
    }
    boolean fresh = !Files.exists(file);
    try {
      Path base = fresh ? Files.createTempFile("sparewell", ".xlsx") : file;
      try {
        if (fresh) {
          Files.write(base, NewBook.template("club.xlsx"));
        }
        return put(sheets, base, file, now);
      } finally {
        if (fresh) {
          Files.delete(base);
        }
      }
    } catch (WorkbookRefused refused) {
      return refused(file, refused.getMessage());
    } catch (IOException disk) {
      return refused(
          file, file + " cannot be written. Check that its folder is there and may be written to.");
    }
  }

  private static Outcome put(List<ReportSheet> sheets, Path base, Path file, LocalDateTime now)
      throws WorkbookRefused, IOException {
    try (WorkbookPackage book = WorkbookPackage.open(base)) {
      List<String> wanted = sheets.stream().map(ReportSheet::name).toList();
      Map<String, String> names = BookRun.names(book, wanted);
      OwnParts parts = BookRun.parts(book, wanted, names, name -> true);
      RenderOptions rendering =
          new RenderOptions(
              now.toLocalDate().toString(),
              file.getFileName().toString(),
              "USD",
              book.date1904(),
              names);
      SheetRenderer.render(sheets, UnitSystem.US, rendering, parts, Runnable::run);
      Optional<Path> saved =
          WorkbookSaver.save(parts, book, file, now, RunOptions.USUAL_BACKUPS, false);
      String backup = saved.map(kept -> ". Backup of what it was: " + kept).orElse("");
      return Outcome.done(file, "written", List.of("Written: " + file + backup + "."));
    }
  }

  private static Outcome refused(Path file, String why) {
    return Outcome.refused(file, why, List.of(why));
  }
}
