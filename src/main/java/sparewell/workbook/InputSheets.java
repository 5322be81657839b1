package sparewell.workbook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sparewell.declared.DeclaredTable;

/** All input sheets as {@code input-sheets.txt} declares them. */
public final class InputSheets {
  private static final LocalDate EARLIEST_DATE = LocalDate.of(1950, 1, 1);
  private static final LocalDate LATEST_DATE = LocalDate.of(2199, 12, 31);

  private static final String SHARED = "Columns of several sheets";
  private static final Map<String, InputSheet> DECLARED = read("input-sheets.txt");

  public static final InputSheet SETTINGS = DECLARED.get("Settings");
  public static final InputSheet STYLES = DECLARED.get("Styles");
  public static final InputSheet STOCK = DECLARED.get("Stock");
  public static final InputSheet BOXES = DECLARED.get("Boxes");
  public static final InputSheet COMPARTMENTS = DECLARED.get("Compartments");
  public static final InputSheet TRIPS = DECLARED.get("Trips");
  public static final InputSheet STYLE_HOURS = DECLARED.get("Style hours");
  public static final InputSheet LOSSES = DECLARED.get("Losses");
  public static final InputSheet RESTOCKS = DECLARED.get("Restocks");
  public static final InputSheet TRANSFERS = DECLARED.get("Transfers");
  public static final InputSheet BOX_LOG = DECLARED.get("Box log");
  public static final InputSheet COUNTS = DECLARED.get("Counts");
  public static final InputSheet EVENTS = DECLARED.get("Events");
  public static final InputSheet EVENT_PLAN = DECLARED.get("Event plan");
  public static final InputSheet LOADS = DECLARED.get("Loads");
  public static final InputSheet BOAT = DECLARED.get("Boat");

  /** Rows of the sheet Settings, each as a column; a word such as 'none' stands for no value. */
  public static final InputSheet SETTING_ROWS = DECLARED.get("Rows of Settings");

  public static final InputSheet BOAT_ROWS = DECLARED.get("Rows of Boat");

  /** Every input sheet, in the order of the workbook, which also decides on spellings. */
  public static final List<InputSheet> ALL =
      DECLARED.values().stream()
          .filter(
              sheet ->
                  !List.of(SHARED, SETTING_ROWS.name(), BOAT_ROWS.name()).contains(sheet.name()))
          .toList();

  private InputSheets() {}

  public static boolean isPlausible(LocalDate day) {
    return !day.isBefore(EARLIEST_DATE) && !day.isAfter(LATEST_DATE);
  }

  private static Map<String, InputSheet> read(String file) {
    Map<String, InputSheet> sheets = new LinkedHashMap<>();
    for (DeclaredTable table : DeclaredTable.read(InputSheets.class, file).values()) {
      List<InputColumn> columns = new ArrayList<>();
      for (List<String> row : table.rows()) {
        columns.add(row.size() == 1 ? sheets.get(SHARED).column(row.get(0)) : column(row));
      }
      String name = plain(table.name());
      sheets.put(name, new InputSheet(name, starred(table.name()), table.title(), columns));
    }
    return sheets;
  }

  private static InputColumn column(List<String> row) {
    Map<String, String> rules = new LinkedHashMap<>();
    Optional<Range> range = Optional.empty();
    for (String rule : row.get(3).split("; ")) {
      if (rule.contains(" to ") && Character.isDigit(rule.charAt(0))) {
        String[] ends = rule.split(" ", 4);
        String unit = ends.length == 4 ? ends[3] : "";
        range =
            Optional.of(new Range(Double.parseDouble(ends[0]), Double.parseDouble(ends[2]), unit));
      } else {
        String word = rule.startsWith("one of ") ? "one of" : rule.split(" ")[0];
        rules.put(word, rule.substring(word.length()).strip());
      }
    }
    return new InputColumn(
        plain(row.get(0)),
        InputColumn.Kind.valueOf(row.get(1).replace(' ', '_').toUpperCase(Locale.ROOT)),
        starred(row.get(0)),
        words(rules.get("one of")),
        rules.getOrDefault("in", ""),
        words(rules.get("also")),
        words(rules.get("files")),
        row.get(2),
        rules.containsKey("forgiving"),
        range,
        row.get(4));
  }

  private static List<String> words(String list) {
    return list == null ? List.of() : List.of(list.split(", "));
  }

  private static boolean starred(String name) {
    return name.endsWith("*");
  }

  private static String plain(String name) {
    return name.replace("*", "");
  }
}
