package sparewell.experience;

import java.util.Locale;

/** Units of the exponential of an estimate; files hold the names in small letters. */
public enum Unit {
  /** Pieces lost in an hour of throwing the style. */
  PIECES_PER_HOUR_THROWN,
  /** Pieces lost in an hour afloat, of a log without hours of styles. */
  PIECES_PER_HOUR_AFLOAT,
  TIMES;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
