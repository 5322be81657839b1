package sparewell.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import sparewell.ooxml.WorkbookRefused;

/**
 * Result of the work on one workbook.
 *
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

  static Outcome done(Path book, String inShort, List<String> summary) {
    return new Outcome(book, ExitCode.DONE, inShort, summary, List.of());
  }

  /** A workbook that was left as it was; {@code lines} say why, the first of them in short. */
  static Outcome refused(Path book, String inShort, List<String> lines) {
    return new Outcome(book, ExitCode.REFUSED, inShort, List.of(), lines);
  }

  /** The same in one sentence or more, without the file's name. */
  static Outcome refused(Path book, String words) {
    return refused(book, words, List.of(book + ": " + words));
  }

  /** The same with faults listed below a line that says what was not done. */
  static Outcome refused(Path book, String inShort, String head, List<String> faults) {
    List<String> lines = new ArrayList<>(List.of(head));
    faults.forEach(fault -> lines.add("  " + fault));
    return refused(book, inShort, lines);
  }

  /** The same for a refusal; {@code out} where the command can write to another file. */
  static Outcome refused(Path book, WorkbookRefused refused, boolean out) {
    String more = out && refused.elsewhere() ? " Or write to another file with --out." : "";
    return refused(book, refused.words() + more, List.of(refused.getMessage() + more));
  }
}
