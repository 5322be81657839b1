package sparewell.finding;

/** Severity of a finding, gravest first. */
public enum Severity {
  /** A row or value was left out, or a limit is broken. */
  ERROR("error"),
  /** Something was read under an assumption. */
  WARNING("warning"),
  /** Worth knowing. */
  NOTE("note");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  /** The word shown to the angler and written to files. */
  public String word() {
    return word;
  }
}
