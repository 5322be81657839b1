package sparewell.workbook;

import java.util.List;
import sparewell.workbook.InputColumn.Kind;

/**
 * A row that the template of a name-and-value sheet (settings, boat) lists.
 *
 * @param name what its first cell says, without unit
 * @param kind what its value is
 * @param choices the words its value may be, where there is a fixed list
 * @param unit unit that the template shows after the name whatever the unit system; empty where the
 *     unit system gives it or there is none
 * @param standard the value that a blank stands for, as the template fills it in; empty where
 *     nothing is filled in
 * @param meaning one sentence for the note and the guide
 */
public record InputRow(
    String name, Kind kind, List<String> choices, String unit, String standard, String meaning) {
  public InputRow {
    choices = List.copyOf(choices);
  }

  static InputRow row(String name, Kind kind, String standard, String meaning) {
    return new InputRow(name, kind, List.of(), "", standard, meaning);
  }

  InputRow in(String symbol) {
    return new InputRow(name, kind, choices, symbol, standard, meaning);
  }

  InputRow oneOf(String... words) {
    return new InputRow(name, kind, List.of(words), unit, standard, meaning);
  }
}
