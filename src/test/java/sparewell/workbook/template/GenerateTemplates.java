package sparewell.workbook.template;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import sparewell.units.UnitSystem;

/** Writes the workbooks kept in {@code workbook-templates}; run with {@code mvn -Ptemplates}. */
public final class GenerateTemplates {
  /**
   * Writes the workbooks that {@code new} copies, and the sheet that a club's report begins with.
   */
  static final List<Kept> ALL =
      List.of(
          kept("blank-us.xlsx", UnitSystem.US, TemplateKind.BLANK),
          kept("blank-metric.xlsx", UnitSystem.METRIC, TemplateKind.BLANK),
          kept("demo.xlsx", UnitSystem.US, TemplateKind.DEMO),
          kept("demo-metric.xlsx", UnitSystem.METRIC, TemplateKind.DEMO),
          kept("messy-demo.xlsx", UnitSystem.US, TemplateKind.MESSY),
          new Kept(
              "club.xlsx",
              () ->
                  PlainBook.bytes(
                      "Losses of a club",
                      "About",
                      List.of(
                          "What a club's logs together say of the losses of each style.",
                          "Made from a file of experience, in which nobody is named. Notes on this"
                              + " sheet are kept."))));

  private GenerateTemplates() {}

  /** A workbook kept in the folder. */
  record Kept(String fileName, Maker maker) {}

  /** Makes the bytes of a workbook, the same ones each time. */
  @FunctionalInterface
  interface Maker {
    byte[] bytes() throws IOException;
  }

  private static Kept kept(String fileName, UnitSystem units, TemplateKind kind) {
    return new Kept(fileName, () -> TemplateWriter.bytes(units, kind));
  }

  /** Writes all into the folder named by the first argument, over what is there. */
  public static void main(String[] arguments) throws IOException {
    for (Kept kept : ALL) {
      Files.write(Path.of(arguments[0], kept.fileName()), kept.maker().bytes());
    }
  }
}
