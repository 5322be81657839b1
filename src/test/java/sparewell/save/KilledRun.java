package sparewell.save;

import java.nio.file.Path;
import java.util.List;
import sparewell.ooxml.WorkbookPackage;

/** Saves into a workbook again and again, with two sets of answers in turn, until it is killed. */
public final class KilledRun {
  static final List<OwnSheet> SHEETS =
      List.of(new OwnSheet("After trip", true), new OwnSheet("Spares", false));

  private KilledRun() {}

  /** Arguments: the workbook and two scratch workbooks. */
  public static void main(String[] arguments) throws Exception {
    for (int n = 0; ; n++) {
      save(Path.of(arguments[0]), Path.of(arguments[1 + n % 2]), n);
      System.out.println("saved");
    }
  }

  static void save(Path book, Path scratch, int second) throws Exception {
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      WorkbookSaver.save(
          new SaveRequest(
              original, book, scratch, SHEETS, Saving.NOW.plusSeconds(second), 3, false));
    }
  }
}
