package sparewell.run;

/** Exit codes of the program; of several, the highest is returned. */
public final class ExitCode {
  /** Done; findings are allowed. */
  public static final int DONE = 0;

  /** Done, but {@code --strict} was given and there were errors among the findings. */
  public static final int FINDINGS = 1;

  public static final int USAGE = 2;

  /** A workbook could not be used or written; it is left as it was. */
  public static final int REFUSED = 3;

  private ExitCode() {}
}
