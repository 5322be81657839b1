package sparewell.run;

import java.io.IOException;
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
import sparewell.ooxml.Fingerprint;
import sparewell.ooxml.WorkbookRefused;
import sparewell.render.RenderOptions;
import sparewell.render.SheetRenderer;
import sparewell.save.file.Replacement;
import sparewell.sheet.ClubSheet;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** The workbook of a club: rates by style over all its logs. */
public final class ClubReport {
  private ClubReport() {}

  /** What was done, for the angler, and whether it went well. */
  public record Written(String line, boolean done) {}

  /**
   * Writes it; what stood there is kept as a backup beside it.
   *
   * @param experience the file of experience that the rows were read from
   * @param rows its rows
   */
  public static Written write(Path file, Path experience, List<Entry> rows, LocalDateTime now) {
    Pool pool = Pool.of(rows);
    List<ReportSheet> sheets =
        Arrays.stream(Unit.values())
            .filter(unit -> unit != Unit.TIMES)
            .flatMap(unit -> Club.of(pool, unit).stream())
            .map(ClubSheet::of)
            .toList();
    if (sheets.isEmpty()) {
      return new Written("No log has a rate yet, so that " + file + " was not written.", false);
    }
    RenderOptions options =
        new RenderOptions(
            now.toLocalDate().toString(), file.getFileName().toString(), "USD", false, Map.of());
    try {
      Optional<Path> backup =
          new Replacement(
                  experience, Fingerprint.of(experience), file, now, RunOptions.USUAL_BACKUPS)
              .replaceBy(fresh -> SheetRenderer.render(sheets, UnitSystem.US, options, fresh));
      return new Written(
          "Written: "
              + file
              + backup.map(kept -> ". Backup of what stood there: " + kept).orElse("")
              + ".",
          true);
    } catch (WorkbookRefused refused) {
      return new Written(refused.getMessage(), false);
    } catch (IOException disk) {
      return new Written(
          file + " cannot be written. Check that its folder is there and may be written to.",
          false);
    }
  }
}
