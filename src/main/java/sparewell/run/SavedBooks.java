package sparewell.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.file.OpenElsewhere;

/**
 * Workbooks of a folder that were saved and closed. The folder is polled, since some file systems
 * report no changes; a workbook counts as saved once two polls find it unchanged.
 */
public final class SavedBooks {
  private record State(long bytes, FileTime saved) {}

  private final Path folder;
  private final Map<Path, State> dealtWith = new HashMap<>();
  private final Map<Path, State> seen = new HashMap<>();

  /** Watches a folder; what is there now counts as dealt with. */
  public SavedBooks(Path folder) throws IOException {
    this.folder = folder;
    for (Path book : in(folder)) {
      state(book).ifPresent(state -> dealtWith.put(book, state));
    }
  }

  /** The workbooks in a folder by name; no lock files, leftovers or temporary files. */
  public static List<Path> in(Path folder) throws IOException {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.filter(SavedBooks::looksLikeWorkbook).sorted().toList();
    }
  }

  /** The workbook saved last before the watch began, which most likely is the next one saved. */
  public Optional<Path> latest() {
    return dealtWith.entrySet().stream()
        .max(Comparator.comparing(known -> known.getValue().saved()))
        .map(Map.Entry::getKey);
  }

  private static boolean looksLikeWorkbook(Path path) {
    String name = path.getFileName().toString().toLowerCase(Locale.ROOT);
    // Names that begin so are lock files and leftovers of spreadsheet programs, and our own
    // temporary files.
    return (name.endsWith(".xlsx") || name.endsWith(".xlsm"))
        && !name.startsWith("~$")
        && !name.startsWith(".")
        && Files.isRegularFile(path);
  }

  /**
   * Workbooks that changed since they were dealt with, look as at the last call, and are closed.
   */
  public List<Path> due() throws IOException {
    List<Path> due = new ArrayList<>();
    for (Path book : in(folder)) {
      Optional<State> now = state(book);
      if (now.isEmpty() || now.get().equals(dealtWith.get(book))) {
        continue;
      }
      if (now.get().equals(seen.put(book, now.get())) && closed(book)) {
        due.add(book);
      }
    }
    return due;
  }

  /**
   * Records that a workbook was processed.
   *
   * @param written true where this program wrote it, so that its present state is done; otherwise
   *     the state last seen is done, and a later change is still due
   */
  public void dealtWith(Path book, boolean written) {
    Optional<State> was = Optional.ofNullable(seen.get(book));
    (written ? state(book) : was).ifPresent(state -> dealtWith.put(book, state));
  }

  private static Optional<State> state(Path book) {
    try {
      BasicFileAttributes now = Files.readAttributes(book, BasicFileAttributes.class);
      return Optional.of(new State(now.size(), now.lastModifiedTime()));
    } catch (IOException goneMeanwhile) {
      return Optional.empty();
    }
  }

  private static boolean closed(Path book) {
    if (!Files.isWritable(book)) {
      return true; // it is refused, once, with what to do
    }
    try {
      OpenElsewhere.check(book);
      return true;
    } catch (WorkbookRefused open) {
      return false;
    }
  }
}
