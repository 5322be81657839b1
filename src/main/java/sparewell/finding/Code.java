package sparewell.finding;

/**
 * Every kind of finding: its id, how much it matters, what is wrong and what was done. The details
 * of a finding fill both texts ({@code %1$s} is the first detail). Append only: people look for the
 * ids.
 */
public enum Code {
  // Reading the workbook
  NOT_A_NUMBER(
      "I-001",
      Severity.ERROR,
      "'%1$s' in %2$s is not a number; write it like 12.5",
      "row left out");

  private final String id;
  private final Severity severity;
  private final String message;
  private final String done;

  Code(String id, Severity severity, String message, String done) {
    this.id = id;
    this.severity = severity;
    this.message = message;
    this.done = done;
  }

  /** Stable id. */
  public String id() {
    return id;
  }

  /** How much it matters. */
  public Severity severity() {
    return severity;
  }

  /** Text of what is wrong. */
  String message() {
    return message;
  }

  /** Text of what was done. */
  String done() {
    return done;
  }
}
