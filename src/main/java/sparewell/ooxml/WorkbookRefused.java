package sparewell.ooxml;

import java.nio.file.Path;

/**
 * A workbook that cannot be used or written. It is as it was before; the message names the file,
 * what is wrong and what to do, in an angler's words.
 */
public final class WorkbookRefused extends Exception {
  private final String problem;
  private final String remedy;
  private final boolean elsewhere;

  /**
   * A refusal.
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

  /** What is wrong, without the file and the remedy. */
  public String problem() {
    return problem;
  }

  /** What is wrong and what to do, without the file. */
  public String words() {
    return problem + ". " + remedy;
  }

  /** Returns whether writing to another file would do, for commands that can. */
  public boolean elsewhere() {
    return elsewhere;
  }
}
