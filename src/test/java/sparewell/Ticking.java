package sparewell;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Types into our sheets as the angler does with another program. */
public final class Ticking {
  private Ticking() {}

  /** A line of a table with a column to type into, by heading. */
  public record Line(String sheet, Map<String, String> cells) {
    public String at(String heading) {
      return cells.getOrDefault(heading, "");
    }
  }

  /** Changes a workbook in another program. */
  @FunctionalInterface
  public interface Edit {
    void edit(XSSFWorkbook book);
  }

  /** Opens, changes and saves. */
  public static void edit(Path file, Edit edit) throws Exception {
    XSSFWorkbook book;
    try (InputStream in = Files.newInputStream(file)) {
      book = new XSSFWorkbook(in);
    }
    edit.edit(book);
    try (OutputStream out = Files.newOutputStream(file)) {
      book.write(out);
    }
    book.close();
  }

  /**
   * Types into a column of every line of the sheet's tables that have it.
   *
   * @param entry what to type for a line: a text, a number, or null for nothing
   * @return the lines that got something
   */
  public static List<Line> type(
      XSSFWorkbook book, String sheetName, String heading, Function<Line, Object> entry) {
    DataFormatter shown = new DataFormatter();
    List<Line> typed = new ArrayList<>();
    Sheet sheet = book.getSheet(sheetName);
    Map<String, Integer> columns = new HashMap<>();
    for (Row row : sheet) {
      Map<String, Integer> here = new HashMap<>();
      for (Cell cell : row) {
        if (cell.getCellType() == CellType.STRING) {
          here.putIfAbsent(
              cell.getStringCellValue().replaceAll(" \\([^)]*\\)$", ""), cell.getColumnIndex());
        }
      }
      if (here.containsKey(heading)) {
        columns = here;
        continue;
      }
      if (row.getCell(0) == null || row.getCell(0).toString().isEmpty()) {
        columns = Map.of();
      }
      Integer at = columns.get(heading);
      if (at == null || row.getCell(at) == null) {
        continue;
      }
      Map<String, String> cells = new HashMap<>();
      columns.forEach(
          (name, column) -> cells.put(name, shown.formatCellValue(row.getCell(column))));
      if (!framed(row.getCell(at))) {
        continue; // only rows that ask for something have such a cell
      }
      Line line = new Line(sheetName, cells);
      Object value = entry.apply(line);
      if (value != null) {
        row.getCell(at).setBlank(); // else a text that stands in its cell stays
      }
      if (value instanceof Number number) {
        row.getCell(at).setCellValue(number.doubleValue());
      } else if (value != null && !value.toString().isEmpty()) {
        row.getCell(at).setCellValue(value.toString());
      }
      if (value != null) {
        typed.add(line);
      }
    }
    return typed;
  }

  /** Types beside a label. */
  public static void field(XSSFWorkbook book, String sheetName, String label, Object value) {
    for (Row row : book.getSheet(sheetName)) {
      Cell first = row.getCell(0);
      if (first != null && first.toString().equals(label)) {
        row.getCell(1).setBlank();
        if (value instanceof Number number) {
          row.getCell(1).setCellValue(number.doubleValue());
        } else if (value instanceof LocalDate day) {
          row.getCell(1).setCellValue(day);
        } else {
          row.getCell(1).setCellValue(value.toString());
        }
        return;
      }
    }
    throw new IllegalArgumentException("no field " + label);
  }

  /** Whether a cell has the frame of those to type into. */
  private static boolean framed(Cell cell) {
    return cell.getCellStyle().getBorderLeft() != org.apache.poi.ss.usermodel.BorderStyle.NONE;
  }

  /** All texts of a sheet, row by row, without blank cells. */
  public static List<String> texts(Sheet sheet) {
    List<String> texts = new ArrayList<>();
    for (Row row : sheet) {
      row.forEach(cell -> texts.add(cell.toString()));
    }
    texts.removeIf(String::isEmpty);
    return texts;
  }

  /** What stands under a heading, line by line. */
  public static List<String> typed(Path file, String sheetName, String heading) throws Exception {
    List<String> found = new ArrayList<>();
    try (InputStream in = Files.newInputStream(file);
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      type(
          book,
          sheetName,
          heading,
          line -> {
            if (!line.at(heading).isEmpty()) {
              found.add(line.at(heading));
            }
            return null;
          });
    }
    return found;
  }
}
