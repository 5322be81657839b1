package sparewell.run;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Breaks a long line between words. */
public final class Wrapping {
  private static final Pattern START = Pattern.compile("^ *(?:\\d+\\. )?");

  private Wrapping() {}

  /**
   * The line in pieces of at most {@code width} characters, later ones under the text of the first;
   * a word that is longer stays whole.
   */
  public static List<String> lines(String text, int width) {
    Matcher start = START.matcher(text);
    String first = start.find() ? start.group() : "";
    String indent = " ".repeat(first.length());
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(first);
    boolean any = false;
    for (String word : text.substring(first.length()).split(" +")) {
      if (any && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line = new StringBuilder(indent);
        any = false;
      }
      line.append(any ? " " : "").append(word);
      any = true;
    }
    lines.add(line.toString());
    return lines;
  }
}
