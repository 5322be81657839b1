package sparewell.season;

import java.util.Locale;

/** Causes of loss. */
public enum Cause {
  SNAG,
  FISH,
  BROKEN,
  WORN,
  OTHER;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
