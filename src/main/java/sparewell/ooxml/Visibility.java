package sparewell.ooxml;

/** Returns whether a sheet's tab is shown. */
public enum Visibility {
  VISIBLE,
  HIDDEN,
  /** Hidden so that only a macro or this program can see it. */
  VERY_HIDDEN;

  static Visibility of(String state) {
    return switch (state) {
      case "hidden" -> HIDDEN;
      case "veryHidden" -> VERY_HIDDEN;
      default -> VISIBLE;
    };
  }
}
