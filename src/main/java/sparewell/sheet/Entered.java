package sparewell.sheet;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the angler typed into our sheets, and what of it this run has posted.
 *
 * @param typed what still waits to be posted
 * @param posted rows appended to each of the angler's sheets just before this run, by its name
 */
public record Entered(Typed typed, Map<String, Integer> posted) {
  /** Nothing. */
  public static final Entered NOTHING = new Entered(Typed.NOTHING, Map.of());

  public Entered {
    posted = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(posted));
  }

  /** Nothing posted. */
  public static Entered of(Typed typed) {
    return new Entered(typed, Map.of());
  }
}
