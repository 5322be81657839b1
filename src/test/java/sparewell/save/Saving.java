package sparewell.save;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.render.RenderOptions;
import sparewell.render.SheetRenderer;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** A whole save with made-up sheets, as a run does it. */
public final class Saving {
  /** Wanted names of the sheets; the first stands in front. */
  public static final List<String> WANTED = List.of("After trip", "Spares", "Buy list");

  public static final LocalDateTime NOW = LocalDateTime.of(2026, 3, 8, 17, 30, 5);

  private Saving() {}

  /** Saves into the workbook itself. */
  public static Optional<Path> into(Path book) throws IOException, WorkbookRefused {
    return save(book, book, NOW);
  }

  /** Saves what was read from one file to another. */
  public static Optional<Path> save(Path from, Path to, LocalDateTime now)
      throws IOException, WorkbookRefused {
    try (WorkbookPackage original = WorkbookPackage.open(from)) {
      return save(original, to, now);
    }
  }

  /** Saves what was read before. */
  public static Optional<Path> save(WorkbookPackage original, Path to, LocalDateTime now)
      throws WorkbookRefused {
    return save(original, to, OwnSample.sheets(WANTED, "two blanks"), 1, now);
  }

  /** Saves sheets, so many of them in front. */
  static Optional<Path> save(
      WorkbookPackage original, Path to, List<ReportSheet> sheets, int front, LocalDateTime now)
      throws WorkbookRefused {
    RenderOptions options =
        new RenderOptions("2026-03-08", "Season", "USD", original.date1904(), Map.of());
    return save(original, to, sheets, front, UnitSystem.US, options, now);
  }

  /** Saves sheets rendered in some way. */
  public static Optional<Path> save(
      WorkbookPackage original,
      Path to,
      List<ReportSheet> sheets,
      int front,
      UnitSystem units,
      RenderOptions options,
      LocalDateTime now)
      throws WorkbookRefused {
    List<String> wanted =
        sheets.stream().map(s -> options.sheetNames().getOrDefault(s.name(), s.name())).toList();
    List<String> names = OwnSheetNames.resolve(original, wanted);
    List<OwnSheet> own = new ArrayList<>();
    Map<String, String> actual = new HashMap<>();
    for (int i = 0; i < names.size(); i++) {
      own.add(new OwnSheet(names.get(i), i < front));
      actual.put(sheets.get(i).name(), names.get(i));
    }
    OwnParts parts = OwnParts.of(original, own);
    SheetRenderer.render(
        sheets,
        units,
        new RenderOptions(
            options.date(), options.workbookName(), options.currency(), options.date1904(), actual),
        parts,
        Runnable::run);
    return WorkbookSaver.save(parts, original, to, now, 10, false);
  }
}
