package sparewell.season;

import java.util.Locale;

/** Why a piece was lost. */
public enum Cause {
  SNAG,
  FISH,
  BROKEN,
  WORN,
  OTHER;

  /** The word used in the workbook. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
