package sparewell.sheet;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads what people type into a cell: yes, no, a count. */
public final class Ticks {
  /** Beside the words: an x and the marks of handwriting. */
  private static final Set<String> YES =
      Set.of("yes", "y", "x", "true", "done", "ok", "all", "\u2713", "\u2714", "\u2611", "\u2612");

  private static final Set<String> NO =
      Set.of("no", "n", "false", "none", "not yet", "-", "\u2610");

  private static final Pattern AMOUNT =
      Pattern.compile(
          "(\\d{1,6})(?:\\s*(?:of|out of|/)\\s*(\\d{1,6}))?"
              + "\\s*(?:(p|pcs?|pieces?)|(packs?|bags?))?\\.?");

  private Ticks() {}

  /**
   * A count as typed.
   *
   * @param of of how many, where that was said too
   * @param unit the word of its unit that was typed, {@code Pieces} or {@code Packs}; empty where
   *     none
   */
  public record Amount(int count, OptionalInt of, String unit) {
    /** A count without a total or a unit. */
    public static Amount of(int count) {
      return new Amount(count, OptionalInt.empty(), "");
    }

    /** True where a column of that heading counts in its unit. */
    public boolean countsIn(String heading) {
      return unit.isEmpty() || unit.equals(heading);
    }
  }

  public static boolean isYes(Object entry) {
    return YES.contains(folded(entry));
  }

  /** True for any way to say no, which counts as blank. */
  public static boolean isNo(Object entry) {
    return NO.contains(folded(entry));
  }

  /** A whole number of at least 0, as in 2, 2 of 3, 3 pcs. */
  public static Optional<Amount> amount(Object entry) {
    Matcher parts = AMOUNT.matcher(entry == null ? "" : folded(entry));
    if (!parts.matches()) {
      return Optional.empty();
    }
    OptionalInt of =
        parts.group(2) == null
            ? OptionalInt.empty()
            : OptionalInt.of(Integer.parseInt(parts.group(2)));
    String unit = parts.group(3) != null ? "Pieces" : parts.group(4) != null ? "Packs" : "";
    return Optional.of(new Amount(Integer.parseInt(parts.group(1)), of, unit));
  }

  /** A whole number of pieces, with or without the word. */
  public static OptionalInt pieces(Object entry) {
    return count(entry, amount -> amount.countsIn("Pieces"));
  }

  public static OptionalInt whole(Object entry) {
    return count(entry, amount -> amount.unit().isEmpty());
  }

  private static OptionalInt count(Object entry, Predicate<Amount> unit) {
    Optional<Amount> plain = amount(entry).filter(amount -> amount.of().isEmpty()).filter(unit);
    return plain.isPresent() ? OptionalInt.of(plain.get().count()) : OptionalInt.empty();
  }

  /** A value as text; whole numbers without a point. */
  public static String plain(Object value) {
    if (value instanceof Double number && number == Math.rint(number)) {
      return String.valueOf(number.longValue());
    }
    return value.toString().strip();
  }

  /** Form in which names of places, trips and events are compared: no case, single spaces. */
  public static String fold(String name) {
    return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  /** Folds case, width and spaces, and drops a full stop at the end. */
  private static String folded(Object value) {
    return Normalizer.normalize(plain(value), Normalizer.Form.NFKC)
        .toLowerCase(Locale.ROOT)
        .replaceAll("[\\s\\u200b\\ufe0e\\ufe0f]+", " ")
        .strip()
        .replaceFirst("(?<=\\w)[.!]$", "");
  }
}
