package sparewell.season;

import java.util.Locale;

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
