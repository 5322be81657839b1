package sparewell.ooxml;

import java.nio.file.Path;

/**
 * A workbook that cannot be used or written. It is as it was before; the message names the file,
 * what is wrong and what to do, in an angler's words.
 */
public final class WorkbookRefused extends Exception {
  private final String problem;

  /**
   * A refusal.
   *
   * @param file the workbook as the angler named it
   * @param problem what is wrong, a sentence without its full stop
   * @param remedy what to do, whole sentences
   */
  public WorkbookRefused(Path file, String problem, String remedy) {
    super(file + ": " + problem + ". " + remedy);
    this.problem = problem;
  }

  /** What is wrong, without the file and the remedy. */
  public String problem() {
    return problem;
  }
}
