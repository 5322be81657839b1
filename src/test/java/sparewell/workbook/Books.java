package sparewell.workbook;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

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
  private Consumer<XSSFWorkbook> touch = workbook -> {};

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
    touch = touch.andThen(change);
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

  /** Writes the workbook. */
  public Path write(Path file) {
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      CellStyle dates = workbook.createCellStyle();
      dates.setDataFormat(workbook.createDataFormat().getFormat("yyyy-mm-dd"));
      sheets.forEach((name, grid) -> fill(workbook.createSheet(name), grid, dates));
      touch.accept(workbook);
      ByteArrayOutputStream written = new ByteArrayOutputStream();
      workbook.write(written);
      Files.write(file, rewritten(written.toByteArray()));
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private byte[] rewritten(byte[] zip) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipInputStream from = new ZipInputStream(new ByteArrayInputStream(zip));
        ZipOutputStream to = new ZipOutputStream(out)) {
      for (ZipEntry entry = from.getNextEntry(); entry != null; entry = from.getNextEntry()) {
        byte[] content = from.readAllBytes();
        UnaryOperator<String> change = raw.get(entry.getName());
        if (change != null) {
          String before = new String(content, StandardCharsets.UTF_8);
          String after = change.apply(before);
          if (after.equals(before)) {
            throw new IllegalStateException("nothing to change in " + before);
          }
          content = after.getBytes(StandardCharsets.UTF_8);
        }
        to.putNextEntry(new ZipEntry(entry.getName()));
        to.write(content);
      }
    }
    return out.toByteArray();
  }

  private static void fill(Sheet sheet, String grid, CellStyle dates) {
    int at = 0;
    for (String line : grid.split("\n", -1)) {
      Row row = sheet.createRow(at++);
      List<String> cells = List.of(line.split("\\|", -1));
      for (int i = 0; i < cells.size(); i++) {
        if (!cells.get(i).isEmpty()) {
          set(row.createCell(i), cells.get(i), dates);
        }
      }
    }
  }

  private static void set(Cell cell, String text, CellStyle dates) {
    if (text.startsWith("'")) {
      cell.setCellValue(text.substring(1));
    } else if (text.startsWith("=")) {
      cell.setCellFormula(text.substring(1));
    } else if (text.equals("TRUE") || text.equals("FALSE")) {
      cell.setCellValue(text.equals("TRUE"));
    } else if (text.matches("\\d{4}-\\d{2}-\\d{2}")) {
      cell.setCellValue(LocalDate.parse(text));
      cell.setCellStyle(dates);
    } else if (text.matches("-?\\d+(\\.\\d+)?")) {
      cell.setCellValue(Double.parseDouble(text));
    } else {
      cell.setCellValue(text);
    }
  }
}
