package sparewell.run;

import java.nio.file.Path;
import java.util.List;

/**
 * How the work on one workbook ended.
 *
 * @param book the workbook
 * @param exitCode one of {@link ExitCode}
 * @param inShort the same in a few words, for a line among many workbooks
 * @param summary what to print on standard output, line by line
 * @param problems what to print on standard error, line by line
 */
public record Outcome(
    Path book, int exitCode, String inShort, List<String> summary, List<String> problems) {
  public Outcome {
    summary = List.copyOf(summary);
    problems = List.copyOf(problems);
  }

  /** A workbook that was left as it was. */
  static Outcome refused(Path book, List<String> problems) {
    String first = problems.get(0).replace(book + ": ", "").replace(book + " ", "");
    return new Outcome(book, ExitCode.REFUSED, first, List.of(), problems);
  }
}
