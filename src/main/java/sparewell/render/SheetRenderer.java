package sparewell.render;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import sparewell.save.OwnParts;
import sparewell.table.Block;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** Result sheets as parts of a workbook. */
public final class SheetRenderer {
  private SheetRenderer() {}

  /**
   * Writes sheets. The same arguments give the same bytes.
   *
   * @param beside executor that writes one sheet while the next is laid out
   */
  public static void render(
      List<ReportSheet> sheets,
      UnitSystem units,
      RenderOptions options,
      OwnParts book,
      Executor beside) {
    Looks looks = new Looks(book);
    TableNames tableNames = new TableNames(book);
    SheetParts writer = new SheetParts(book, options);
    CompletableFuture<Void> writing = CompletableFuture.completedFuture(null);
    for (ReportSheet sheet : sheets) {
      SheetPage.Laid page = new SheetPage(sheet, looks, tableNames, units, options).laid();
      join(writing); // no more sheets than one laid out and one written are held
      writing = CompletableFuture.runAsync(() -> writer.write(page.grid(), page.page()), beside);
    }
    join(writing);
  }

  private static void join(CompletableFuture<Void> writing) {
    try {
      writing.join();
    } catch (CompletionException failed) {
      if (failed.getCause() instanceof RuntimeException failure) {
        throw failure;
      }
      throw failed;
    }
  }

  /**
   * Names of tables, the same in every run, because formulas of the angler's go by them: that of
   * the CSV file, else those of the sheet and the title without its numbers, or its subject.
   */
  static final class TableNames {
    private static final String PREFIX = "sw_";
    private static final int LONGEST = 200;
    private final OwnParts book;
    private final Set<String> given = new HashSet<>();

    TableNames(OwnParts book) {
      this.book = book;
    }

    String next(ReportSheet sheet, Block.Rows rows) {
      String file = rows.table().csvFile();
      String title = rows.table().title().replaceAll("[,:;(].*", "");
      String words =
          !rows.about().isEmpty()
              ? joined(sheet.name() + " " + rows.about(), "[^\\p{L}\\p{N}]+")
              : file.isEmpty()
                  ? joined(sheet.name() + (title.isEmpty() ? " list" : " " + title), "[^a-z]+")
                  : joined(file.replace(".csv", ""), "[^a-z]+");
      String plain = PREFIX + words;
      plain = plain.substring(0, Math.min(LONGEST, plain.length()));
      String name = plain;
      for (int again = 2; !given.add(name); again++) {
        name = plain + "_" + again;
      }
      return book.takeTableName(name);
    }

    private static String joined(String words, String between) {
      return words.toLowerCase(Locale.ROOT).replaceAll(between, " ").strip().replace(' ', '_');
    }

    double widthFactor() {
      return book.widthFactor();
    }
  }
}
