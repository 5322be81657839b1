package sparewell.spares;

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
final class ReferenceTable {
  private ReferenceTable() {}

  static List<Map<String, String>> read(String name) {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(ReferenceTable.class.getResourceAsStream(name), name),
                StandardCharsets.UTF_8))) {
      List<String> lines = reader.lines().filter(line -> !line.startsWith("#")).toList();
      String[] header = lines.get(0).split(",");
      List<Map<String, String>> rows = new ArrayList<>();
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(",");
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < header.length; i++) {
          row.put(header[i].strip(), cells[i].strip());
        }
        rows.add(row);
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  static int whole(Map<String, String> row, String column) {
    return Integer.parseInt(row.get(column));
  }
}
