package sparewell.save;

import java.nio.file.Path;
import java.util.List;
import sparewell.ooxml.WorkbookPackage;
import sparewell.table.ReportSheet;

/** Saves into a workbook again and again, with two sets of answers in turn, until it is killed. */
public final class KilledRun {
  private static final List<String> NAMES = List.of("After trip", "Spares");

  private KilledRun() {}

  /** Arguments: the workbook and two texts for our sheets. */
  public static void main(String[] arguments) throws Exception {
    for (int n = 0; ; n++) {
      save(Path.of(arguments[0]), arguments[1 + n % 2], n);
      System.out.println("saved");
    }
  }

  static void save(Path book, String text, int second) throws Exception {
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      List<ReportSheet> sheets = OwnSample.sheets(NAMES, text);
      Saving.save(original, book, sheets, 1, Saving.NOW.plusSeconds(second));
    }
  }
}
