package sparewell.finding;

import java.util.Locale;

/** Severity of a finding, gravest first. */
public enum Severity {
  /** A row or value was left out, or a limit is exceeded. */
  ERROR,
  /** Something was read under an assumption. */
  WARNING,
  /** Worth knowing. */
  NOTE;

  /** Word shown to the angler and written to files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
