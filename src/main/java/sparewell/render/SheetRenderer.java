package sparewell.render;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ForkJoinTask;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.units.UnitSystem;

/** Result sheets as a workbook of their own. */
public final class SheetRenderer {
  private static final String SPREADSHEET =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.";

  private SheetRenderer() {}

  /**
   * Renders sheets as an xlsx package. The same arguments give the same bytes.
   *
   * @param sheets the sheets, in order; at least one
   * @param units units shown
   * @param options what they are rendered for
   */
  public static byte[] render(List<ReportSheet> sheets, UnitSystem units, RenderOptions options) {
    if (sheets.isEmpty()) {
      throw new IllegalArgumentException("no sheet to render");
    }
    Looks looks = new Looks();
    Parts parts = new Parts();
    TableNames tableNames = new TableNames();
    List<Grid> grids = new ArrayList<>();
    SheetParts writer = new SheetParts(parts, options);
    ForkJoinTask<?> writing = ForkJoinTask.adapt(() -> {});
    writing.invoke();
    for (ReportSheet sheet : sheets) {
      SheetPage.Laid page = SheetPage.lay(sheet, looks, tableNames, units, options);
      writing.join(); // one sheet is written while the next one is laid out, and no more are held
      writing =
          ForkJoinTask.adapt(
              () -> {
                writer.add(page.grid(), page.page());
                page.grid().rows.clear(); // a large season has a million cells; names are kept
              });
      if (ForkJoinTask.inForkJoinPool()) {
        writing.invoke();
      } else {
        writing.fork();
      }
      grids.add(page.grid());
    }
    writing.join();
    parts.add("xl/styles.xml", SPREADSHEET + "styles+xml", looks.part());
    parts.relate("xl/workbook.xml", "styles", "styles.xml");
    parts.add(
        "xl/workbook.xml",
        SPREADSHEET + "sheet.main+xml",
        WorkbookXml.part(grids, options.date1904()));
    parts.relate("", "officeDocument", "xl/workbook.xml");
    parts.add(
        "docProps/core.xml",
        "application/vnd.openxmlformats-package.core-properties+xml",
        WorkbookXml.properties(options));
    parts.relate(
        "",
        "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties",
        "docProps/core.xml");
    return parts.zip();
  }

  /**
   * Renders sheets to a file.
   *
   * @throws IOException if the file cannot be written
   */
  public static void render(
      List<ReportSheet> sheets, UnitSystem units, RenderOptions options, Path file)
      throws IOException {
    Files.write(file, render(sheets, units, options));
  }

  /**
   * Names of tables, the same in every run, because formulas of the angler's go by them: that of
   * the CSV file, else those of the sheet and the title without its numbers.
   */
  static final class TableNames {
    private static final String PREFIX = "sw_";
    private static final int LONGEST = 200;
    private final Set<String> given = new HashSet<>();

    String next(ReportSheet sheet, Table<?> table) {
      String title = table.title().replaceAll("[,:;(].*", "");
      String about =
          table.csvFile().isEmpty()
              ? sheet.name() + (title.isEmpty() ? " list" : " " + title)
              : table.csvFile().replace(".csv", "");
      String words = about.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", " ").strip();
      String plain = PREFIX + words.replace(' ', '_');
      plain = plain.substring(0, Math.min(LONGEST, plain.length()));
      String name = plain;
      for (int again = 2; !given.add(name); again++) {
        name = plain + "_" + again;
      }
      return name;
    }
  }
}
