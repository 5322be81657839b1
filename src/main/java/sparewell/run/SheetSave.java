package sparewell.run;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.render.RenderOptions;
import sparewell.render.SheetRenderer;
import sparewell.save.OwnParts;
import sparewell.save.OwnSheet;
import sparewell.save.WorkbookSaver;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/**
 * Sheets of ours for a workbook.
 *
 * @param names their tabs, where a sheet of the angler's has the usual name
 * @param currency ISO 4217 code
 */
record SheetSave(
    List<ReportSheet> sheets,
    Map<String, String> names,
    String date,
    String currency,
    UnitSystem units) {
  /**
   * What the sheets are put together from.
   *
   * @param sheets their usual names
   * @param names their tabs, where a sheet of the angler's has the usual name
   * @param front sheets that stand before the angler's
   */
  static OwnParts parts(
      WorkbookPackage book, List<String> sheets, Map<String, String> names, Predicate<String> front)
      throws WorkbookRefused {
    return OwnParts.of(
        book,
        sheets.stream()
            .map(name -> new OwnSheet(names.getOrDefault(name, name), front.test(name)))
            .toList());
  }

  /**
   * Renders the sheets and writes the workbook.
   *
   * @param parts begun for the same sheets
   * @param book the workbook as it was read
   * @param standing the workbook as it stands
   * @param target the file to write, that of {@code standing} or another
   * @return backup of the target as it was; absent where there was none
   */
  Optional<Path> into(
      OwnParts parts,
      WorkbookPackage book,
      WorkbookPackage standing,
      Path target,
      LocalDateTime now,
      int backupsKept,
      boolean dropSignature)
      throws WorkbookRefused {
    String file = target.getFileName().toString();
    RenderOptions options = new RenderOptions(date, file, currency, book.date1904(), names);
    SheetRenderer.render(sheets, units, options, parts, Beside.executor());
    return WorkbookSaver.save(parts, standing, target, now, backupsKept, dropSignature);
  }
}
