package sparewell.experience;

import java.util.Locale;

/** Kinds of quantity in a row of experience; files hold the names in small letters. */
public enum Kind {
  /** Rate of a style, pieces per hour at the log's mix of covers. */
  STYLE,
  /** Rate of a family's typical style. */
  FAMILY,
  /** Multiplier of rates in a cover. */
  COVER,
  /** Quantity common to a log; its name is one of {@link Spread}. */
  SPREAD;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public enum Spread {
    COMMON_RATE,
    /** Standard deviation of the log rate between families. */
    FAMILY_SPREAD,
    /** Coefficient of variation of rates within a family. */
    STYLE_SPREAD,
    /** Size of the negative binomial of a day's losses. */
    DAY_SIZE;

    /** Name in files, in the form in which names are compared, like {@code common rate}. */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }
}
