package sparewell.ooxml;

/** Visibility of a sheet's tab. */
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
