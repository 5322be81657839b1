package sparewell.save;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/** A whole save with made-up sheets, as a run does it. */
public final class Saving {
  /** Wanted names of the sheets; the first stands in front. */
  public static final List<String> WANTED = List.of("After trip", "Spares", "Buy list");

  public static final LocalDateTime NOW = LocalDateTime.of(2026, 3, 8, 17, 30, 5);

  private static final Map<Made, byte[]> MADE = new ConcurrentHashMap<>();

  private record Made(List<String> names, boolean date1904) {}

  private Saving() {}

  /** Made once, as that takes longer than a save. */
  private static byte[] scratch(List<String> names, boolean date1904) throws IOException {
    Made wanted = new Made(names, date1904);
    byte[] made = MADE.get(wanted);
    if (made == null) {
      Path file = Files.createTempFile("made", ".xlsx");
      made = Files.readAllBytes(OwnWorkbook.write(file, date1904, names));
      Files.delete(file);
      MADE.put(wanted, made);
    }
    return made;
  }

  /** Saves into the workbook itself. */
  public static SaveResult into(Path book) throws IOException, WorkbookRefused {
    return save(book, book, NOW);
  }

  /** Saves what was read from one file to another. */
  public static SaveResult save(Path from, Path to, LocalDateTime now)
      throws IOException, WorkbookRefused {
    try (WorkbookPackage original = WorkbookPackage.open(from)) {
      return save(original, to, now);
    }
  }

  /** Saves what was read before. */
  public static SaveResult save(WorkbookPackage original, Path to, LocalDateTime now)
      throws IOException, WorkbookRefused {
    List<String> names = OwnSheetNames.resolve(original, WANTED);
    List<OwnSheet> sheets = new ArrayList<>();
    names.forEach(n -> sheets.add(new OwnSheet(n, sheets.isEmpty())));
    Path scratch = Files.createTempFile("scratch", ".xlsx");
    try {
      Files.write(scratch, scratch(names, original.date1904()));
      return WorkbookSaver.save(
          new SaveRequest(original, to, scratch, sheets, now, SaveRequest.USUAL_BACKUPS, false));
    } finally {
      Files.delete(scratch);
    }
  }
}
