package sparewell;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import sparewell.workbook.OpenBook;

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
    void edit(OpenBook book);
  }

  /** Opens, changes and saves. */
  public static void edit(Path file, Edit edit) {
    OpenBook book = OpenBook.of(file);
    edit.edit(book);
    book.save();
  }

  /**
   * Types into a column of every line of the sheet's tables that have it.
   *
   * @param entry what to type for a line: a text, a number, or null for nothing
   * @return the lines that got something
   */
  public static List<Line> type(
      OpenBook book, String sheet, String heading, Function<Line, Object> entry) {
    List<Line> typed = new ArrayList<>();
    Map<String, Integer> columns = Map.of();
    for (OpenBook.Row row : book.rows(sheet)) {
      Map<String, Integer> here = new HashMap<>();
      row.cells()
          .forEach(
              (column, cell) -> {
                if (cell.isText()) {
                  here.putIfAbsent(cell.text().replaceAll(" \\([^)]*\\)$", ""), column);
                }
              });
      if (here.containsKey(heading)) {
        columns = here;
        continue;
      }
      if (row.text(1).isEmpty()) {
        columns = Map.of();
      }
      Integer at = columns.get(heading);
      if (at == null || !row.cell(at).framed()) {
        continue; // only rows that ask for something have such a cell
      }
      Map<String, String> cells = new HashMap<>();
      columns.forEach((name, column) -> cells.put(name, row.text(column)));
      Line line = new Line(sheet, cells);
      Object value = entry.apply(line);
      if (value != null) {
        row.cell(at).set(value);
        typed.add(line);
      }
    }
    return typed;
  }

  /** Lines of a sheet's tables that have a column to type into. */
  public static List<Line> lines(Path file, String sheet, String heading) {
    List<Line> lines = new ArrayList<>();
    type(
        OpenBook.of(file),
        sheet,
        heading,
        line -> {
          lines.add(line);
          return null;
        });
    return lines;
  }

  /** Entries under a heading, line by line. */
  public static List<String> typed(Path file, String sheet, String heading) {
    return lines(file, sheet, heading).stream()
        .map(line -> line.at(heading))
        .filter(entry -> !entry.isEmpty())
        .toList();
  }

  /** Types beside a label. */
  public static void field(OpenBook book, String sheet, String label, Object value) {
    book.rows(sheet).stream()
        .filter(row -> row.text(1).equals(label))
        .findFirst()
        .orElseThrow()
        .cell(2)
        .set(value);
  }

  /** All texts of a sheet, row by row, without blank cells. */
  public static List<String> texts(OpenBook book, String sheet) {
    return book.rows(sheet).stream()
        .flatMap(row -> row.cells().values().stream())
        .map(OpenBook.Cell::text)
        .filter(text -> !text.isEmpty())
        .toList();
  }
}
