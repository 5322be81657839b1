package sparewell.reference;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Reads a table of reference values; its first line names the source. */
public final class Reference {
  private Reference() {}

  /** A row, by column. */
  public record Row(Map<String, String> cells) {
    /** A number. */
    public double number(String column) {
      return Double.parseDouble(cells.get(column));
    }

    /** A whole number. */
    public int whole(String column) {
      return Integer.parseInt(cells.get(column));
    }

    /** A text. */
    public String text(String column) {
      return cells.get(column);
    }
  }

  /** The rows of a table among the test resources. */
  public static List<Row> read(String name) {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    Reference.class.getResourceAsStream("/reference/" + name), name),
                StandardCharsets.UTF_8))) {
      List<String> lines = reader.lines().toList();
      if (!lines.get(0).startsWith("# ")) {
        throw new IllegalStateException(name + " does not name its source");
      }
      String[] header = lines.get(1).split(",");
      List<Row> rows = new ArrayList<>();
      for (String line : lines.subList(2, lines.size())) {
        String[] cells = line.split(",");
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < header.length; i++) {
          row.put(header[i], cells[i]);
        }
        rows.add(new Row(row));
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
