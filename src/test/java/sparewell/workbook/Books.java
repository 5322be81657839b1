package sparewell.workbook;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import sparewell.ooxml.Zips;

/**
 * Builds workbooks for tests from text grids: one line a row, cells parted by {@code |}. A cell
 * that looks like a number becomes one, {@code 2026-05-03} a real date, {@code =A1*2} a formula
 * without a stored value, {@code TRUE} a boolean; a leading apostrophe keeps it text.
 *
 * <p>{@link #season()} holds one small sound season; {@link #with} replaces a sheet of it.
 */
public final class Books {
  private final Map<String, String> sheets = new LinkedHashMap<>();
  private final Map<String, UnaryOperator<String>> raw = new LinkedHashMap<>();
  private Consumer<XSSFWorkbook> touch;

  private Books() {}

  /** No sheets at all. */
  public static Books empty() {
    return new Books();
  }

  /** Two styles, one box aboard, a shelf at home, one trip: nothing to find fault with. */
  public static Books season() {
    return new Books()
        .with("Settings", "Setting|Value\nUnits|us\nAs of|2026-06-30")
        .with(
            "Styles",
            "Style|Family|Weight each|Counted in|Pieces per pack|Pack price|Carry at least\n"
                + "Crank|Hard baits|0.5|pieces|1|7.5|2\n"
                + "Worm|Soft baits|0.25|packs|10|5|1")
        .with(
            "Stock",
            "Style|Size|Colour|Box|Count|Counted on\n"
                + "Crank|'3/8|Red|Tray A|6|2026-01-01\n"
                + "Worm||Green|Tray A|2.5|2026-01-01\n"
                + "Crank|'3/8|Red|Shelf|4|2026-01-01")
        .with("Boxes", "Box|Compartment|Empty weight\nTray A|Bow|1.5")
        .with(
            "Compartments", "Compartment|From transom|Ashore\nBow|150|no\nStern|20|no\nShelf|0|yes")
        .with("Trips", "Trip|Date|Hours|Days|Cover\nT1|2026-03-01|8|1|wood")
        .with("Style hours", "Trip|Style|Hours\nT1|Crank|3\nT1|Worm|5")
        .with("Losses", "Trip|Style|Size|Colour|Lost|Cause|Ran out\nT1|Crank|'3/8|Red|2|snag|no");
  }

  /** Adds a sheet or replaces the one of that name. */
  public Books with(String sheet, String grid) {
    sheets.put(sheet, grid);
    return this;
  }

  /** Appends rows to a sheet. */
  public Books plus(String sheet, String rows) {
    sheets.merge(sheet, rows, (before, more) -> before + "\n" + more);
    return this;
  }

  /** Changes the grid of a sheet. */
  public Books edit(String sheet, UnaryOperator<String> change) {
    sheets.computeIfPresent(sheet, (name, grid) -> change.apply(grid));
    return this;
  }

  /** Takes a sheet away. */
  public Books without(String sheet) {
    sheets.remove(sheet);
    return this;
  }

  /** Changes the workbook before it is written. */
  public Books touch(Consumer<XSSFWorkbook> change) {
    touch = touch == null ? change : touch.andThen(change);
    return this;
  }

  /** Changes the text of a part after the workbook was written. */
  public Books raw(String part, UnaryOperator<String> change) {
    raw.merge(part, change, (a, b) -> text -> b.apply(a.apply(text)));
    return this;
  }

  /** Changes the text of the part that holds a sheet. */
  public Books rawSheet(String sheet, UnaryOperator<String> change) {
    int position = new ArrayList<>(sheets.keySet()).indexOf(sheet) + 1;
    return raw("xl/worksheets/sheet" + position + ".xml", change);
  }

  /** Text that the book was built from. */
  @Override
  public String toString() {
    if (touch != null || !raw.isEmpty()) {
      throw new IllegalStateException("changed beyond its grids");
    }
    return sheets.toString();
  }

  /** Writes the workbook. */
  public Path write(Path file) {
    Map<String, byte[]> parts = PlainBook.parts(sheets);
    try {
      if (touch != null) {
        parts = touched(Zips.write(parts));
      }
      for (Map.Entry<String, UnaryOperator<String>> change : raw.entrySet()) {
        String before = Zips.text(parts, change.getKey());
        String after = change.getValue().apply(before);
        if (after.equals(before)) {
          throw new IllegalStateException("nothing to change in " + before);
        }
        parts.put(change.getKey(), Zips.utf8(after));
      }
      return Files.write(file, Zips.write(parts));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Map<String, byte[]> touched(byte[] plain) throws IOException {
    try (XSSFWorkbook workbook = new XSSFWorkbook(new ByteArrayInputStream(plain))) {
      touch.accept(workbook);
      ByteArrayOutputStream written = new ByteArrayOutputStream();
      workbook.write(written);
      return Zips.read(written.toByteArray());
    }
  }
}
