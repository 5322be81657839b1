package sparewell.experience.file;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Pattern;
import sparewell.experience.Entry;
import sparewell.experience.Key;
import sparewell.experience.Kind;
import sparewell.experience.Unit;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.Words;

/** Parses one row; every field is bounded, as anybody may have written the file. */
final class EntryText {
  private static final Pattern ID = Pattern.compile("[0-9a-f]{32}");
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,9}(\\.\\d{1,12})?");
  private static final Pattern COUNT = Pattern.compile("\\d{1,7}");
  private static final int LONGEST_NAME = 80;
  private static final double MOST_HOURS = 1e6;
  private static final int MOST_TRIPS = 100_000;

  private EntryText() {}

  /**
   * Reads a row.
   *
   * @throws IllegalArgumentException where a field cannot be meant; the message says which and why
   */
  static Entry read(List<String> cells) {
    if (cells.size() != ExperienceFile.COLUMNS.size()) {
      throw wrong("it has " + cells.size() + " cells instead of " + ExperienceFile.COLUMNS.size());
    }
    Kind kind =
        known(
            Kind.values(), Kind::word, cells.get(3), "kind must be style, family, cover or spread");
    Unit unit =
        known(
            Unit.values(),
            Unit::word,
            cells.get(4),
            "unit must be pieces_per_hour_thrown, pieces_per_hour_afloat or times");
    String name = name(cells.get(5), "name");
    if (name.isEmpty()) {
      throw wrong("name is blank");
    }
    String family = name(cells.get(6), "family");
    String key = Names.fold(name);
    check(kind, unit, key);
    double most = kind == Kind.STYLE ? 2 : Entry.MOST_VARIANCE;
    return new Entry(
        id(cells.get(0), "log_id"),
        id(cells.get(1), "fingerprint"),
        count(cells.get(2), "last_year", 1950, 2199),
        new Key(kind, unit, key),
        name,
        family,
        Names.fold(family),
        number(cells.get(7), "ln_estimate", Entry.LEAST_ESTIMATE, Entry.MOST_ESTIMATE),
        number(cells.get(8), "ln_variance", 1e-6, most),
        count(cells.get(9), "trips", 1, MOST_TRIPS),
        number(cells.get(10), "hours", 0, MOST_HOURS),
        count(cells.get(11), "pieces", 0, 9_999_999));
  }

  private static void check(Kind kind, Unit unit, String key) {
    boolean rate = kind == Kind.STYLE || kind == Kind.FAMILY;
    if (kind == Kind.SPREAD) {
      Kind.Spread spread =
          known(Kind.Spread.values(), Kind.Spread::key, key, "no spread has that name");
      rate = spread == Kind.Spread.COMMON_RATE;
    }
    if (rate == (unit == Unit.TIMES)) {
      throw wrong("unit " + unit.word() + " does not go with kind " + kind.word());
    }
  }

  private static <T> T known(T[] all, Function<T, String> word, String cell, String otherwise) {
    return Arrays.stream(all)
        .filter(one -> word.apply(one).equals(cell))
        .findFirst()
        .orElseThrow(() -> wrong(otherwise));
  }

  private static String name(String cell, String column) {
    String name = Names.clean(Words.plain(cell));
    if (name.length() > LONGEST_NAME) {
      throw wrong(column + " is longer than " + LONGEST_NAME + " letters");
    }
    return name;
  }

  private static String id(String cell, String column) {
    if (!ID.matcher(cell).matches()) {
      throw wrong(column + " must be 32 of 0-9, a-f");
    }
    return cell;
  }

  private static int count(String cell, String column, int least, int most) {
    int value = COUNT.matcher(cell).matches() ? Integer.parseInt(cell) : -1;
    if (value < least || value > most) {
      throw wrong(column + " must be a whole number from " + least + " to " + most);
    }
    return value;
  }

  private static double number(String cell, String column, double least, double most) {
    double value = NUMBER.matcher(cell).matches() ? Double.parseDouble(cell) : Double.NaN;
    if (!(value >= least && value <= most)) {
      throw wrong(
          String.format(Locale.ROOT, "%s must be a number from %.9g to %.9g", column, least, most)
              .replaceAll("(\\.\\d*?)0+(?= |$)", "$1")
              .replaceAll("\\.(?= |$)", ""));
    }
    return value;
  }

  private static IllegalArgumentException wrong(String why) {
    return new IllegalArgumentException(why);
  }
}
