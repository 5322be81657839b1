package sparewell.run;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import sparewell.units.UnitSystem;
import sparewell.workbook.template.TemplateKind;
import sparewell.workbook.template.TemplateWriter;

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
    if (!file.toString().toLowerCase(java.util.Locale.ROOT).endsWith(".xlsx")) {
      return Outcome.refused(file, "the name of a new workbook must end in .xlsx.");
    }
    try {
      TemplateWriter.write(
          file,
          metric ? UnitSystem.METRIC : UnitSystem.US,
          demo ? TemplateKind.DEMO : TemplateKind.BLANK);
    } catch (FileAlreadyExistsException taken) {
      return Outcome.refused(
          file, "it is there already and was left as it is. Choose another name.");
    } catch (NoSuchFileException missing) {
      return Outcome.refused(
          file, "it could not be written: its folder is not there. Make it first.");
    } catch (IOException disk) {
      return Outcome.refused(
          file,
          "it could not be written. Check that its folder may be written to and the disk has"
              + " space.");
    }
    return new Outcome(
        file,
        ExitCode.DONE,
        "made",
        List.of(
            "Made " + file + ".",
            demo
                ? "It holds an invented season. Next: sparewell analyse " + file
                : "Open it, follow 'Read me first', fill it in. Next: sparewell analyse " + file),
        List.of());
  }
}
