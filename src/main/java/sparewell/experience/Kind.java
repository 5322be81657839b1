package sparewell.experience;

import java.util.Arrays;
import java.util.Optional;

/** Kinds of quantity in a row of experience. */
public enum Kind {
  /** The rate of a style, pieces per hour at the log's mix of covers. */
  STYLE("style"),
  /** The rate of a family's typical style. */
  FAMILY("family"),
  /** Multiplier of rates in a cover. */
  COVER("cover"),
  /** A quantity common to a log; its name is one of {@link Spread}. */
  SPREAD("spread");

  private final String word;

  Kind(String word) {
    this.word = word;
  }

  /** The word in files. */
  public String word() {
    return word;
  }

  /** The kind with that word. */
  public static Optional<Kind> of(String word) {
    return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
  }

  /** Quantities common to a log. */
  public enum Spread {
    /** Rate of a typical style. */
    COMMON_RATE("common rate"),
    /** Standard deviation of the log rate between families. */
    FAMILY_SPREAD("family spread"),
    /** Coefficient of variation of rates within a family. */
    STYLE_SPREAD("style spread"),
    /** Size of the negative binomial of a day's losses. */
    DAY_SIZE("day size");

    private final String key;

    Spread(String key) {
      this.key = key;
    }

    /** Its name in files, in the form in which names are compared. */
    public String key() {
      return key;
    }

    /** Returns whether it is a rate. */
    public boolean isRate() {
      return this == COMMON_RATE;
    }
  }
}
