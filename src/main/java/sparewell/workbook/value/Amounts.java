package sparewell.workbook.value;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import sparewell.finding.Code;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.workbook.TypedChance;
import sparewell.workbook.grid.RawCell;

/** Reads amounts: masses, lengths, hours, money, chances and counts. */
public final class Amounts {
  private static final double MOST_GRAMS = 1e8;
  private static final double MOST_METRES = 1e3;
  private static final double MOST_HOURS = 1e5;
  private static final double MOST_DAYS = 1e4;
  private static final double MOST_PLAIN = 1e9;
  private static final double MOST_PIECES = 1e6;
  private static final double SLACK = 1e-9;

  private Amounts() {}

  /** A mass of at least 0. */
  public static Optional<Mass> mass(RawCell cell, MassUnit unit, Remarks remarks) {
    Function<String, Optional<Double>> milligrams =
        word ->
            (word.isEmpty() ? Optional.of(unit) : MassUnit.ofSymbol(word)).map(u -> u.milligrams());
    return measure(cell, milligrams, "oz, lb, g or kg", unit.symbol(), remarks)
        .flatMap(value -> upTo(value, MOST_GRAMS * 1e3, "100 000 kg", remarks))
        .map(value -> new Mass(Math.round(value)));
  }

  /** A length or position, signed. */
  public static Optional<Length> position(RawCell cell, LengthUnit unit, Remarks remarks) {
    Function<String, Optional<Double>> micrometres =
        word -> (word.isEmpty() ? Optional.of(unit) : lengthUnit(word)).map(u -> u.micrometres());
    return measure(cell, micrometres, "in, ft, mm, cm or m", unit.symbol(), remarks)
        .flatMap(value -> atMost(value, MOST_METRES * 1e6, "1000 m", remarks))
        .map(value -> new Length(Math.round(value)));
  }

  public static Optional<Length> length(RawCell cell, LengthUnit unit, Remarks remarks) {
    return position(cell, unit, remarks)
        .filter(value -> check(value.micrometres() > 0, Code.NOT_POSITIVE, "", remarks));
  }

  private static Optional<LengthUnit> lengthUnit(String word) {
    return word.equals("'") ? Optional.of(LengthUnit.FOOT) : LengthUnit.ofSymbol(word);
  }

  /** Sums the terms of an amount with units; a date is read as the fraction that was typed. */
  private static Optional<Double> measure(
      RawCell cell,
      Function<String, Optional<Double>> unitSize,
      String known,
      String symbol,
      Remarks remarks) {
    if (cell.kind() == RawCell.Kind.DATE) {
      Optional<Dates.TypedFraction> typed = Dates.typedFraction(cell);
      typed.ifPresentOrElse(
          fraction -> remarks.assumed(Code.DATE_AS_FRACTION, fraction.text() + " " + symbol),
          () -> remarks.unusable(Code.NOT_A_NUMBER, ""));
      return typed.map(fraction -> fraction.value() * unitSize.apply("").orElseThrow());
    }
    List<AmountText.Term> terms = terms(cell, remarks);
    Optional<Double> sum =
        sum(
            terms,
            unitSize,
            word -> remarks.unusable(Code.UNKNOWN_UNIT, "'" + word + "' is none of " + known));
    if (sum.isPresent()) {
      String word = stripPoints(terms.get(0).word());
      if (!word.isEmpty() && !unitSize.apply(word).equals(unitSize.apply(""))) {
        remarks.assumed(Code.UNIT_IN_CELL, word);
      }
    }
    return sum;
  }

  private static Optional<Double> sum(
      List<AmountText.Term> terms,
      Function<String, Optional<Double>> wordSize,
      Consumer<String> unknown) {
    double sum = 0;
    for (AmountText.Term term : terms) {
      Optional<Double> size = wordSize.apply(stripPoints(term.word()));
      if (size.isEmpty()) {
        unknown.accept(term.word());
        return Optional.empty();
      }
      sum += term.amount() * size.get();
    }
    return terms.isEmpty() ? Optional.empty() : Optional.of(sum);
  }

  private static String stripPoints(String word) {
    return word.replace(".", "");
  }

  /** Hours of at least 0; {@code 6:30} is six and a half. */
  public static Optional<Double> hours(RawCell cell, Remarks remarks) {
    if (cell.kind() == RawCell.Kind.DATE && cell.number() >= 0 && cell.number() < 100) {
      double hours = Math.round(cell.number() * 24 * 3600) / 3600.0;
      remarks.assumed(Code.TIME_AS_HOURS, Numbers.plain(hours) + " hours");
      return Optional.of(hours);
    }
    if (cell.kind() == RawCell.Kind.TEXT && cell.text().strip().matches("\\d{1,4}:[0-5]\\d")) {
      String[] parts = cell.text().strip().split(":");
      double hours = Integer.parseInt(parts[0]) + Integer.parseInt(parts[1]) / 60.0;
      remarks.assumed(Code.TIME_AS_HOURS, Numbers.plain(hours) + " hours");
      return Optional.of(hours);
    }
    return worded(cell, Amounts::hourSize, remarks)
        .flatMap(value -> upTo(value, MOST_HOURS, "100 000", remarks));
  }

  private static Optional<Double> hourSize(String word) {
    return switch (word) {
      case "h", "hr", "hrs", "hour", "hours" -> Optional.of(1.0);
      case "min", "mins", "minute", "minutes" -> Optional.of(1 / 60.0);
      default -> Optional.empty();
    };
  }

  public static Optional<Double> days(RawCell cell, Remarks remarks) {
    return worded(cell, word -> size(word.matches("d|days?"), 1), remarks)
        .flatMap(value -> atMost(value, MOST_DAYS, "10 000", remarks))
        .filter(value -> check(value > 0, Code.NOT_POSITIVE, "", remarks));
  }

  /** A number of at least 0; a percent sign divides by 100. */
  public static Optional<Double> number(RawCell cell, Remarks remarks) {
    return worded(cell, word -> size(word.equals("%"), 0.01), remarks)
        .flatMap(value -> upTo(value, MOST_PLAIN, "1 000 000 000", remarks));
  }

  /** Money of at least 0, rounded to four decimals. */
  public static Optional<BigDecimal> money(RawCell cell, Remarks remarks) {
    RawCell plain =
        cell.kind() == RawCell.Kind.TEXT
            ? RawCell.text(cell.column(), cell.text().replaceAll("\\p{Sc}", ""))
            : cell;
    return worded(plain, word -> size(word.matches("[a-z]{3}|each|ea"), 1), remarks)
        .flatMap(value -> upTo(value, MOST_PLAIN, "1 000 000 000", remarks))
        .map(value -> new BigDecimal(Numbers.plain(value)).setScale(4, RoundingMode.HALF_UP))
        .map(value -> value.stripTrailingZeros())
        .map(value -> value.scale() < 2 ? value.setScale(2) : value);
  }

  /** A probability, 0 and 1 excluded; 50 to 99.9 is taken as percent. */
  public static Optional<Double> chance(RawCell cell, Remarks remarks) {
    Optional<Double> value = worded(cell, word -> size(word.equals("%"), 0.01), remarks);
    if (value.isEmpty()) {
      return value;
    }
    Optional<TypedChance> chance = TypedChance.of(value.get());
    check(chance.isPresent(), Code.BAD_CHANCE, "", remarks);
    chance
        .filter(TypedChance::isPercent)
        .ifPresent(c -> remarks.assumed(Code.PERCENT_CHANCE, Numbers.plain(c.probability())));
    return chance.map(TypedChance::probability);
  }

  /** Whole pieces of at least 0. */
  public static Optional<Integer> pieces(RawCell cell, Remarks remarks) {
    return worded(cell, word -> size(word.matches("pcs?|pieces?"), 1), remarks)
        .flatMap(value -> upTo(value, MOST_PIECES, "1 000 000", remarks))
        .filter(value -> check(isWhole(value), Code.NOT_WHOLE, "", remarks))
        .map(value -> (int) Math.rint(value))
        .map(value -> alone(cell, value, remarks));
  }

  /** The count, with a remark on a word after it, which may have had a meaning. */
  private static int alone(RawCell cell, int count, Remarks remarks) {
    if (cell.kind() == RawCell.Kind.TEXT && cell.text().chars().anyMatch(Character::isLetter)) {
      remarks.assumed(Code.WORD_BEHIND_COUNT, String.valueOf(count));
    }
    return count;
  }

  /** Packs of at least 0 as pieces, rounded up (a floor) or down (a stock) to whole ones. */
  public static Optional<Integer> packs(
      RawCell cell, int piecesPerPack, boolean up, Remarks remarks) {
    Optional<Double> packs =
        worded(cell, word -> size(word.matches("packs?|pks?|pkgs?"), 1), remarks)
            .flatMap(
                value -> upTo(value, MOST_PIECES / piecesPerPack, "1 000 000 pieces", remarks));
    if (packs.isEmpty()) {
      return Optional.empty();
    }
    double exact = packs.get() * piecesPerPack;
    if (Math.abs(exact - Math.rint(exact)) < 0.05) { // 0.33 packs of six are two
      return Optional.of((int) Math.rint(exact));
    }
    int pieces = (int) (up ? Math.ceil(exact) : Math.floor(exact));
    remarks.assumed(Code.PART_OF_PIECE, pieces + " pieces");
    return Optional.of(pieces);
  }

  private static Optional<Double> size(boolean known, double size) {
    return known ? Optional.of(size) : Optional.empty();
  }

  /** A plain number, or terms with words that have a size. */
  private static Optional<Double> worded(
      RawCell cell, Function<String, Optional<Double>> wordSize, Remarks remarks) {
    return sum(
        terms(cell, remarks),
        word -> word.isEmpty() ? Optional.of(1.0) : wordSize.apply(word.toLowerCase(Locale.ROOT)),
        word -> remarks.unusable(Code.NOT_A_NUMBER, ""));
  }

  private static List<AmountText.Term> terms(RawCell cell, Remarks remarks) {
    switch (cell.kind()) {
      case NUMBER -> {
        return List.of(new AmountText.Term(cell.number(), ""));
      }
      case TEXT -> {
        Optional<AmountText> amount = AmountText.of(cell.text());
        if (amount.isEmpty()) {
          remarks.unusable(Code.NOT_A_NUMBER, "");
        } else if (amount.get().comma()) {
          remarks.assumed(Code.COMMA_NUMBER, Numbers.plain(amount.get().terms().get(0).amount()));
        }
        return amount.map(AmountText::terms).orElse(List.of());
      }
      case BOOLEAN -> remarks.unusable(Code.BOOLEAN_AS_NUMBER, "");
      case DATE -> remarks.unusable(Code.DATE_AS_NUMBER, "");
      default -> remarks.unusable(Code.NOT_A_NUMBER, "");
    }
    return List.of();
  }

  private static boolean isWhole(double value) {
    return Math.abs(value - Math.rint(value)) <= SLACK * Math.max(1, value);
  }

  private static Optional<Double> upTo(double value, double most, String shown, Remarks remarks) {
    return check(value >= 0, Code.NEGATIVE, "", remarks)
        ? atMost(value, most, shown, remarks)
        : Optional.empty();
  }

  private static Optional<Double> atMost(double value, double most, String shown, Remarks remarks) {
    return check(Math.abs(value) <= most, Code.TOO_LARGE, shown, remarks)
        ? Optional.of(value)
        : Optional.empty();
  }

  private static boolean check(boolean good, Code code, String more, Remarks remarks) {
    if (!good) {
      remarks.unusable(code, more);
    }
    return good;
  }
}
