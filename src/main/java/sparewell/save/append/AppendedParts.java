package sparewell.save.append;

import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/** The parts of a workbook that change with new rows. */
public final class AppendedParts {
  private AppendedParts() {}

  /**
   * Edits the parts.
   *
   * @param pack applied to each part as it is made, so that they are not all held unpacked
   * @return the packed parts by their keys
   */
  public static <P> Map<String, P> of(AppendRequest request, Function<byte[], P> pack)
      throws WorkbookRefused, IOException {
    WorkbookPackage book = request.original();
    Map<String, P> edited = new TreeMap<>();
    for (NewRows added : request.sheets()) {
      String part = added.sheet().partName().orElseThrow();
      byte[] sheet =
          new RowAppend(book.file(), added, book.sheetText(part), request.showsDates()).apply();
      edited.put(PartNames.key(part), pack.apply(sheet));
      TableGrowth.of(book, added)
          .forEach((table, content) -> edited.put(PartNames.key(table), pack.apply(content)));
    }
    Recalculation.asked(book, request.sheets())
        .ifPresent(content -> edited.put(PartNames.key(book.workbookPart()), pack.apply(content)));
    return edited;
  }
}
