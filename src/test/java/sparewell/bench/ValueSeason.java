package sparewell.bench;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import sparewell.workbook.Books;

/**
 * A small invented season, sound at first, with every input sheet filled, whose values can then be
 * altered: single cells, whole columns, to nothing, to much, to the same.
 */
final class ValueSeason {
  static final LocalDate AS_OF = LocalDate.of(2026, 6, 30);

  private static final String[] COVERS = {"wood", "grass", "open", ""};
  private static final double[] NUMBERS = {
    0, 1e-9, 1e-4, 0.01, 0.1, 0.5, 1, 2, 3, 10, 24, 50, 99, 100, 400, 800, 1000, 1e4, 1e5, 1e6, 1e7,
    1e9, 1e12, 1e15, -1, -0.001, -1e6
  };
  private static final LocalDate[] DATES = {
    LocalDate.of(1950, 1, 1),
    LocalDate.of(1999, 12, 31),
    AS_OF.minusYears(3),
    AS_OF.minusDays(1),
    AS_OF,
    AS_OF.plusDays(1),
    AS_OF.plusYears(5),
    LocalDate.of(2199, 12, 31),
    LocalDate.of(2300, 1, 1)
  };

  private final SplittableRandom random;
  private final Map<String, List<List<String>>> sheets = new LinkedHashMap<>();

  /** The season of a seed, unaltered. */
  ValueSeason(long seed) {
    random = new SplittableRandom(seed);
    int styles = 3 + random.nextInt(8);
    int trips = 2 + random.nextInt(random.nextInt(4) == 0 ? 60 : 12);
    settings();
    stock(styles);
    boat();
    log(styles, trips);
    ahead(styles);
  }

  private void settings() {
    sheet("Settings", "Setting", "Value");
    row("Settings", "Units", random.nextBoolean() ? "us" : "metric");
    row("Settings", "Carry at least", random.nextInt(5));
    row("Settings", "Chance wanted", "0.9");
    row("Settings", "Planning hours", 10 + random.nextInt(30));
    row("Settings", "Planning days", 1 + random.nextInt(4));
    row("Settings", "Budget", 50 + random.nextInt(400));
    row("Settings", "Fill factor", "0.8");
    row("Settings", "Side tolerance", 60);
    row("Settings", "Idle after (months)", 12);
    row("Settings", "Half-life (months)", random.nextBoolean() ? "24" : "");
    row("Settings", "Label width (mm)", 63);
    row("Settings", "Labels down", 8);
  }

  private void stock(int styles) {
    sheet(
        "Styles",
        "Style",
        "Family",
        "Weight each",
        "Counted in",
        "Pieces per pack",
        "Pack price",
        "Carry at least",
        "Needed at once",
        "Spare factor",
        "Importance",
        "Chance wanted");
    sheet(
        "Stock",
        "Style",
        "Size",
        "Colour",
        "Box",
        "Count",
        "Weight each",
        "Pack price",
        "Carry at least",
        "Counted on");
    for (int s = 0; s < styles; s++) {
      boolean packs = random.nextInt(3) == 0;
      row(
          "Styles",
          "Style " + s,
          "Family " + s % 3,
          "0." + (1 + random.nextInt(9)),
          packs ? "packs" : "pieces",
          packs ? 10 : 1,
          4 + random.nextInt(9),
          random.nextBoolean() ? "" : "2",
          random.nextInt(5) == 0 ? "2" : "",
          "",
          random.nextInt(3) == 0 ? "3" : "",
          random.nextInt(4) == 0 ? "0.95" : "");
      for (int i = 0; i <= random.nextInt(3); i++) {
        row(
            "Stock",
            "Style " + s,
            i + " in",
            i % 2 == 0 ? "red" : "blue",
            random.nextInt(4) == 0 ? "Shelf" : "Box " + random.nextInt(5),
            1 + random.nextInt(9),
            random.nextInt(3) == 0 ? "0.4" : "",
            "",
            "",
            AS_OF.minusDays(40));
      }
    }
  }

  private void boat() {
    sheet(
        "Boxes",
        "Box",
        "Compartment",
        "Length",
        "Width",
        "Height",
        "Empty weight",
        "Last checked",
        "Check every (days)");
    for (int b = 0; b < 5; b++) {
      row(
          "Boxes",
          "Box " + b,
          "Place " + b % 4,
          10 + b,
          8,
          3,
          1 + b / 2.0,
          AS_OF.minusDays(90),
          60);
    }
    sheet(
        "Compartments",
        "Compartment",
        "From transom",
        "From centreline",
        "Length",
        "Width",
        "Height",
        "Max load",
        "Ashore");
    for (int c = 0; c < 4; c++) {
      row("Compartments", "Place " + c, 20 + 40 * c, c % 2 == 0 ? 15 : -15, 40, 20, 12, 60, "no");
    }
    row("Compartments", "Shelf", 0, 0, "", "", "", "", "yes");
    sheet("Loads", "Load", "Weight", "From transom", "From centreline", "Kind");
    row("Loads", "Hull", 900, 80, 0, "hull");
    row("Loads", "Motor", 200, -6, 0, "motor");
    row("Loads", "Angler", 180, 70, 0, "person");
    sheet("Boat", "Item", "Value");
    row("Boat", "Plate weight", 1200);
    row("Boat", "Plate persons weight", 500);
    row("Boat", "Trim test weight", 180);
    row("Boat", "Trim test distance", 60);
    row("Boat", "Trim test bow change", 2);
    row("Boat", "Heel test weight", 180);
    row("Boat", "Heel test distance", 20);
    row("Boat", "Heel test angle", 3);
  }

  private void log(int styles, int trips) {
    sheet("Trips", "Trip", "Date", "Hours", "Days", "Cover");
    sheet("Style hours", "Trip", "Style", "Hours");
    sheet("Losses", "Trip", "Style", "Size", "Colour", "Lost", "Cause", "Ran out");
    boolean byStyle = random.nextInt(3) > 0;
    for (int t = 0; t < trips; t++) {
      LocalDate day = AS_OF.minusDays(7L * (trips - t) + random.nextInt(3));
      row(
          "Trips",
          "T" + t,
          day,
          4 + random.nextInt(6),
          random.nextInt(5) == 0 ? 2 : 1,
          COVERS[random.nextInt(COVERS.length)]);
      for (int k = 0; k < 3; k++) {
        int s = random.nextInt(styles);
        if (byStyle) {
          row("Style hours", "T" + t, "Style " + s, 1 + random.nextInt(3));
        }
        if (random.nextInt(3) > 0) {
          row(
              "Losses",
              "T" + t,
              "Style " + s,
              "0 in",
              random.nextBoolean() ? "red" : "",
              random.nextInt(4),
              "snag",
              random.nextInt(9) == 0 ? "yes" : "no");
        }
      }
    }
    sheet("Restocks", "Date", "Style", "Size", "Colour", "Box", "Count", "Cost");
    sheet("Transfers", "Date", "Style", "Size", "Colour", "Count", "From box", "To box");
    sheet("Box log", "Date", "Box", "Compartment", "Checked");
    for (int i = 0; i < 3; i++) {
      row(
          "Restocks",
          AS_OF.minusDays(5 + 20 * i),
          "Style " + i,
          "0 in",
          "red",
          "Box " + i,
          1 + random.nextInt(4),
          12);
      row("Transfers", AS_OF.minusDays(3 + i), "Style " + i, "0 in", "red", 1, "Box " + i, "Shelf");
      row("Box log", AS_OF.minusDays(2 + i), "Box " + i, "Place " + random.nextInt(4), "yes");
    }
  }

  private void ahead(int styles) {
    sheet("Events", "Event", "Date", "Hours", "Days", "Cover", "Box", "Slots", "Chance wanted");
    sheet("Event plan", "Event", "Style", "Hours", "Colours");
    for (int e = 0; e < random.nextInt(4); e++) {
      row(
          "Events",
          "Event " + e,
          AS_OF.plusDays(3 + 20 * e),
          16,
          2,
          COVERS[e],
          "Box " + e,
          12,
          e == 1 ? "0.9" : "");
      for (int k = 0; k < random.nextInt(3); k++) {
        row("Event plan", "Event " + e, "Style " + random.nextInt(styles), 3 + k, "red");
      }
    }
  }

  private void sheet(String name, Object... headings) {
    sheets.put(name, new ArrayList<>());
    row(name, headings);
  }

  private void row(String sheet, Object... cells) {
    List<String> texts = new ArrayList<>();
    for (Object cell : cells) {
      texts.add(cell.toString());
    }
    sheets.get(sheet).add(texts);
  }

  /** Alters values; gives what was done, for a report. */
  String alter() {
    List<String> done = new ArrayList<>();
    int times =
        switch (random.nextInt(4)) {
          case 0 -> 1;
          case 1 -> 2 + random.nextInt(4);
          default -> 1 + random.nextInt(3);
        };
    boolean columns = random.nextInt(3) == 0;
    for (int i = 0; i < times || done.isEmpty(); i++) {
      List<String> names = new ArrayList<>(sheets.keySet());
      String name = names.get(random.nextInt(names.size()));
      List<List<String>> rows = sheets.get(name);
      if (rows.size() < 2) {
        continue;
      }
      int column = random.nextInt(rows.get(0).size());
      int row = 1 + random.nextInt(rows.size() - 1);
      if (!isValue(rows.get(row).get(column))) {
        i -= random.nextInt(8) == 0 ? 0 : 1; // most cells hold names; look for another
        continue;
      }
      done.add(
          columns
              ? column(name, column)
              : name + " " + set(name, row, column, other(name, row, column)));
    }
    return String.join("; ", done);
  }

  private String column(String name, int column) {
    List<List<String>> rows = sheets.get(name);
    boolean same = random.nextBoolean();
    String value = "";
    for (int row = 1; row < rows.size(); row++) {
      if (isValue(rows.get(row).get(column))) {
        value = same && !value.isEmpty() ? value : other(name, row, column);
        set(name, row, column, value);
      }
    }
    return name + ", all " + rows.get(0).get(column) + (same ? " " + value : " at random");
  }

  private String set(String name, int row, int column, String value) {
    List<List<String>> rows = sheets.get(name);
    rows.get(row).set(column, value);
    return rows.get(name.equals("Settings") || name.equals("Boat") ? row : 0)
            .get(name.equals("Settings") || name.equals("Boat") ? 0 : column)
        + " "
        + value;
  }

  private static boolean isValue(String text) {
    return text.matches("-?[\\d.]+|\\d{4}-\\d\\d-\\d\\d");
  }

  private String other(String name, int row, int column) {
    String text = sheets.get(name).get(row).get(column);
    if (text.matches("\\d{4}-.*")) {
      return DATES[random.nextInt(DATES.length)].toString();
    }
    double value = NUMBERS[random.nextInt(NUMBERS.length)];
    if (random.nextInt(4) == 0) { // near what is there, or any number of any size
      value =
          random.nextBoolean()
              ? Double.parseDouble(text) * Math.pow(10, random.nextInt(7) - 3)
              : Math.pow(10, random.nextDouble() * 14 - 6);
    }
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** The workbook as it stands. */
  Books book() {
    Books books = Books.empty();
    sheets.forEach(
        (name, rows) ->
            books.with(
                name,
                rows.stream()
                    .map(cells -> String.join("|", cells))
                    .collect(Collectors.joining("\n"))));
    return books;
  }
}
