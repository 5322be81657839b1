package sparewell.run;

import java.nio.file.Path;
import java.util.List;

/** The work on one workbook. */
final class BookRun {
  private BookRun() {}

  static Outcome analyse(Path book, Path folder, RunOptions options) {
    return Outcome.refused(book, List.of("not wired yet"));
  }

  static Outcome check(Path book, RunOptions options) {
    return Outcome.refused(book, List.of("not wired yet"));
  }
}
