package sparewell.render;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sparewell.table.Entry;

/**
 * Rules of the cells that the angler types into.
 *
 * @see "ECMA-376 part 1, section 18.3.1.33 (data validations)"
 */
final class EntryXml {
  private static final int LONGEST = 255;

  private EntryXml() {}

  static void write(Xml xml, Map<Entry, List<Grid.Stretch>> entries) {
    if (entries.isEmpty()) {
      return;
    }
    xml.open("dataValidations count='{}'", entries.size());
    entries.forEach(
        (entry, cells) ->
            rule(
                xml,
                entry,
                cells.stream().map(Grid.Stretch::cells).collect(Collectors.joining(" "))));
    xml.close();
  }

  private static void rule(Xml xml, Entry entry, String cells) {
    boolean listed = listed(entry);
    String type = listed ? "list" : type(entry.rule());
    // Where other texts may be typed too, the list only offers.
    boolean refuses = entry.rule() != Entry.Rule.ANYTHING && !type.equals("none");
    xml.open(
        "dataValidation type='{}' operator='{}' allowBlank='1' showInputMessage='{}'"
            + " showErrorMessage='{}' error='{}' prompt='{}' sqref='{}'",
        type,
        entry.rule() == Entry.Rule.DATE ? "greaterThan" : "between",
        !entry.prompt().isEmpty(),
        refuses,
        bound(entry),
        shortened(entry.prompt()),
        cells);
    if (listed) {
      xml.leafText("formula1", '"' + String.join(",", entry.words()).replace("\"", "\"\"") + '"');
    } else if (entry.rule() == Entry.Rule.DATE) {
      xml.leafText("formula1", "1");
    } else if (!type.equals("none")) {
      xml.leafText("formula1", SheetXml.number(entry.least()));
      xml.leafText("formula2", SheetXml.number(entry.most()));
    }
    xml.close();
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
