package sparewell.sheet;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The angler's entries on our sheets, and the rows that this run has posted from them.
 *
 * @param typed what still waits to be posted
 * @param posted rows appended to each of the angler's sheets just before this run, by its name
 */
public record Entered(Typed typed, Map<String, Integer> posted) {
  public static final Entered NOTHING = new Entered(Typed.NOTHING, Map.of());

  public Entered {
    posted = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(posted));
  }

  /** Nothing posted. */
  public static Entered of(Typed typed) {
    return new Entered(typed, Map.of());
  }
}
