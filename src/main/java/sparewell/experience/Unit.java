package sparewell.experience;

import java.util.Arrays;
import java.util.Optional;

/** Units of the exponential of an estimate. */
public enum Unit {
  /** Pieces lost in an hour of throwing the style. */
  PER_HOUR_THROWN("pieces_per_hour_thrown"),
  /** Pieces lost in an hour afloat, of a log without hours of styles. */
  PER_HOUR_AFLOAT("pieces_per_hour_afloat"),
  /** A pure number. */
  TIMES("times");

  private final String word;

  Unit(String word) {
    this.word = word;
  }

  /** The word in files. */
  public String word() {
    return word;
  }

  /** The unit with that word. */
  public static Optional<Unit> of(String word) {
    return Arrays.stream(values()).filter(unit -> unit.word.equals(word)).findFirst();
  }
}
