package sparewell.run;

import java.nio.file.Path;
import java.util.List;

/** Makes a workbook to begin with. */
public final class NewBook {
  private NewBook() {}

  /**
   * Makes a workbook; never overwrites one.
   *
   * @param metric grams, kilograms and centimetres instead of ounces, pounds and inches
   * @param demo filled with the invented season instead of empty
   */
  public static Outcome make(Path file, boolean metric, boolean demo) {
    return Outcome.refused(file, List.of("not wired yet"));
  }
}
