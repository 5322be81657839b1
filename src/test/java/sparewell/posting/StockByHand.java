package sparewell.posting;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.csv.CSVRecord;
import sparewell.Command;
import sparewell.Ticking;

/** A stock reckoned line by line from what our sheets ask for; pieces by item and place. */
final class StockByHand {
  private StockByHand() {}

  /** The findings of a run. */
  static Map<String, Integer> of(Path reports) throws Exception {
    Map<String, Integer> stock = new TreeMap<>();
    for (CSVRecord row : Command.rows(reports.resolve("where-it-is.csv"))) {
      String place = row.get("box").isEmpty() ? row.get("compartment") : row.get("box");
      stock.merge(item(row) + place, Integer.parseInt(row.get("count")), Integer::sum);
    }
    stock.values().removeIf(pieces -> pieces == 0);
    return stock;
  }

  static String item(CSVRecord row) {
    return item(row.get("style"), row.get("size"), row.get("colour"));
  }

  static String item(Ticking.Line line) {
    return item(line.at("Style"), line.at("Size"), line.at("Colour"));
  }

  private static String item(String style, String size, String colour) {
    return style + "|" + size + "|" + colour + "|";
  }

  /** Puts pieces somewhere, or takes them away (negative). */
  static void move(Map<String, Integer> stock, String key, int pieces) {
    if (stock.merge(key, pieces, Integer::sum) == 0) {
      stock.remove(key);
    }
  }

  /** Carries out a line of a plan, or a part of it. */
  static void carry(Map<String, Integer> stock, Ticking.Line line, int pieces) {
    String from =
        line.at("From box").isEmpty()
            ? line.at("From") + line.at("From compartment")
            : line.at("From box");
    move(stock, item(line) + from, -pieces);
    move(stock, item(line) + line.at("Into"), pieces);
  }

  static List<String> differences(Map<String, Integer> wanted, Map<String, Integer> got) {
    TreeSet<String> keys = new TreeSet<>(wanted.keySet());
    keys.addAll(got.keySet());
    return keys.stream()
        .filter(key -> !Objects.equals(wanted.get(key), got.get(key)))
        .map(key -> key + ": wanted " + wanted.get(key) + ", got " + got.get(key))
        .toList();
  }

  /**
   * Ticks all that a workbook asks for; gives the stock as it is then.
   *
   * @param beyond whether also what the budget does not pay for
   */
  static Map<String, Integer> tickAll(Path book, Map<String, Integer> before, boolean beyond) {
    Map<String, Integer> after = new TreeMap<>(before);
    Ticking.edit(
        book,
        open -> {
          for (Ticking.Line line : Ticking.type(open, "Spares", "Done", l -> "yes")) {
            carry(after, line, Integer.parseInt(line.at("Pieces")));
          }
          for (Ticking.Line line :
              Ticking.type(
                  open,
                  "Buy list",
                  "Done",
                  l -> !beyond && l.at("Within budget").equals("no") ? null : "x")) {
            move(after, item(line) + line.at("Into"), Integer.parseInt(line.at("Pieces")));
          }
          for (Ticking.Line line : Ticking.type(open, "Event packing", "Done", l -> "Yes")) {
            carry(after, line, Integer.parseInt(line.at("Pieces")));
          }
          Ticking.type(open, "Stow plan", "Done", l -> "yes");
          if (open.sheets().contains("After trip")) {
            Ticking.type(open, "After trip", "Done", l -> "yes");
          }
        });
    return after;
  }
}
