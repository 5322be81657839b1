package sparewell.ooxml;

import java.nio.file.Path;

/**
 * Refusal of a workbook that cannot be used or written. The file is unchanged; the message names
 * it, the problem and the remedy, in an angler's words.
 */
public final class WorkbookRefused extends Exception {
  private final String problem;
  private final String remedy;
  private final boolean elsewhere;

  /**
   * Refusal that holds for any file.
   *
   * @param file the workbook as the angler named it
   * @param problem what is wrong, a sentence without its full stop
   * @param remedy what to do, whole sentences
   */
  public WorkbookRefused(Path file, String problem, String remedy) {
    this(file, problem, remedy, false);
  }

  /**
   * A refusal that may not hold for another file.
   *
   * @param elsewhere whether writing to another file would do
   */
  public WorkbookRefused(Path file, String problem, String remedy, boolean elsewhere) {
    super(file + ": " + problem + ". " + remedy);
    this.problem = problem;
    this.remedy = remedy;
    this.elsewhere = elsewhere;
  }

  /** Problem without the file and the remedy. */
  public String problem() {
    return problem;
  }

  /** Problem and remedy without the file. */
  public String words() {
    return problem + ". " + remedy;
  }

  /** Returns whether writing to another file would do, for commands that can. */
  public boolean elsewhere() {
    return elsewhere;
  }
}
