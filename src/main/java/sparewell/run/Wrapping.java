package sparewell.run;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.text.WordUtils;

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
    String words = text.substring(first.length()).replaceAll(" +", " ");
    String wrapped = WordUtils.wrap(words, width - first.length(), "\n", false);
    return (first + wrapped.replace("\n", "\n" + indent)).lines().toList();
  }
}
