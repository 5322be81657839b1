package sparewell.declared;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A table of a text file among the resources. It begins with its name in square brackets and a
 * title; each further line is a row, its fields parted by {@code |}. Blank lines and those that
 * begin with {@code #} say nothing.
 */
public record DeclaredTable(String name, String title, List<List<String>> rows) {
  public DeclaredTable {
    rows = List.copyOf(rows);
  }

  /** The tables of a file beside a class. */
  public static List<DeclaredTable> read(Class<?> beside, String file) {
    List<DeclaredTable> tables = new ArrayList<>();
    List<List<String>> rows = new ArrayList<>();
    String head = "";
    for (String line : (text(beside, file) + "\n[]").split("\n")) {
      if (line.startsWith("[")) {
        if (!head.isEmpty()) {
          int end = head.indexOf(']');
          String title = head.substring(end + 1).strip();
          tables.add(new DeclaredTable(head.substring(1, end), title, rows));
        }
        head = line;
        rows.clear();
      } else if (!line.isBlank() && !line.startsWith("#")) {
        rows.add(List.of(line.split(" *\\| *", -1)));
      }
    }
    return tables;
  }

  private static String text(Class<?> beside, String file) {
    try (InputStream in = beside.getResourceAsStream(file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException damaged) {
      throw new UncheckedIOException(damaged);
    }
  }
}
