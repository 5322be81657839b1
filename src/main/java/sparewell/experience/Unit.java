package sparewell.experience;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Units of the exponential of an estimate; files hold the names in small letters. */
public enum Unit {
  /** Pieces lost in an hour of throwing the style. */
  PIECES_PER_HOUR_THROWN,
  /** Pieces lost in an hour afloat, of a log without hours of styles. */
  PIECES_PER_HOUR_AFLOAT,
  /** A pure number. */
  TIMES;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Optional<Unit> of(String word) {
    return Arrays.stream(values()).filter(unit -> unit.word().equals(word)).findFirst();
  }
}
