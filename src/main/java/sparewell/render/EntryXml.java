package sparewell.render;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sparewell.table.Entry;

/** Rules of the cells to type into (ECMA-376 part 1, section 18.3.1.33: data validations). */
final class EntryXml {
  private static final int LONGEST = 255;

  private EntryXml() {}

  static String rules(Map<Entry, List<Grid.Stretch>> entries) {
    return Xml.counted("entries", List.copyOf(entries.entrySet()), EntryXml::rule);
  }

  private static String rule(Map.Entry<Entry, List<Grid.Stretch>> cells) {
    Entry entry = cells.getKey();
    String type = listed(entry) ? "list" : type(entry.rule());
    // Where other texts may be typed too, the list only offers.
    boolean refuses = entry.rule() != Entry.Rule.ANYTHING && !type.equals("none");
    return Xml.filled(
        "entry",
        type,
        entry.rule() == Entry.Rule.DATE ? "greaterThan" : "between",
        !entry.prompt().isEmpty(),
        refuses,
        bound(entry),
        shortened(entry.prompt()),
        cells.getValue().stream().map(Grid.Stretch::cells).collect(Collectors.joining(" ")),
        formulas(entry, type));
  }

  private static String formulas(Entry entry, String type) {
    return switch (type) {
      case "none" -> "";
      case "list" ->
          Xml.filled(
              "one bound", '"' + String.join(",", entry.words()).replace("\"", "\"\"") + '"');
      case "date" -> Xml.filled("one bound", 1);
      default ->
          Xml.filled("two bounds", SheetXml.number(entry.least()), SheetXml.number(entry.most()));
    };
  }

  private static boolean listed(Entry entry) {
    String all = String.join(",", entry.words());
    return !all.isEmpty()
        && all.length() <= LONGEST
        && entry.words().stream().noneMatch(word -> word.contains(","));
  }

  private static String type(Entry.Rule rule) {
    return switch (rule) {
      case ANYTHING -> "none";
      case WHOLE -> "whole";
      case NUMBER -> "decimal";
      case DATE -> "date";
    };
  }

  private static String bound(Entry entry) {
    String ends =
        SheetXml.number(entry.least()) + " to " + SheetXml.number(entry.most()) + ", or nothing.";
    return switch (entry.rule()) {
      case ANYTHING -> "";
      case WHOLE -> "Type a whole number from " + ends;
      case NUMBER -> "Type a number from " + ends;
      case DATE -> "Type a date, or nothing.";
    };
  }

  private static String shortened(String text) {
    return text.length() <= LONGEST ? text : text.substring(0, LONGEST - 1) + "…";
  }
}
