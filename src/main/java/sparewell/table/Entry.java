package sparewell.table;

import java.util.List;

/**
 * A cell of an output sheet that the angler fills in. It has a light frame; the spreadsheet offers
 * the words, refuses values out of range, and shows the prompt. Programs differ in what they
 * refuse, so values read back must be checked.
 *
 * @param words offered in a drop-down list; not shown where one holds a comma or all are longer
 *     than 255 characters together, which spreadsheets do not take
 * @param least least number, both ends included; 0 for a rule without bounds
 * @param prompt what to type, at most 255 characters are shown; may be empty
 * @param widthPoints least width of the cell, as room for handwriting; 0 for the usual one
 * @param heightPoints least height of its row; 0 for the usual one
 */
public record Entry(
    Rule rule,
    List<String> words,
    double least,
    double most,
    String prompt,
    double widthPoints,
    double heightPoints) {
  public enum Rule {
    ANYTHING,

    WHOLE,
    NUMBER,
    DATE
  }

  public Entry {
    words = List.copyOf(words);
  }

  /** Anything; the words, if any, are offered, so that most need not type. */
  public static Entry anything(String prompt, String... words) {
    return new Entry(Rule.ANYTHING, List.of(words), 0, 0, prompt, 0, 0);
  }

  public static Entry whole(int least, int most, String prompt) {
    return new Entry(Rule.WHOLE, List.of(), least, most, prompt, 0, 0);
  }

  public static Entry number(double least, double most, String prompt) {
    return new Entry(Rule.NUMBER, List.of(), least, most, prompt, 0, 0);
  }

  public static Entry date(String prompt) {
    return new Entry(Rule.DATE, List.of(), 0, 0, prompt, 0, 0);
  }

  public Entry roomy(double newWidthPoints, double newHeightPoints) {
    return new Entry(rule, words, least, most, prompt, newWidthPoints, newHeightPoints);
  }
}
