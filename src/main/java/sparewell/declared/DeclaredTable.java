package sparewell.declared;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A table of a text file among the resources. It begins with its name in square brackets and a
 * title; each further line is a row, its fields parted by {@code |}. Blank lines and those that
 * begin with {@code #} say nothing.
 */
public record DeclaredTable(String name, String title, List<List<String>> rows) {
  private static final Pattern BAR = Pattern.compile(" *\\| *");

  public DeclaredTable {
    rows = List.copyOf(rows);
  }

  /** Its rows by their first field, or the second where that is blank. */
  public Map<String, List<String>> byName() {
    return rows.stream()
        .collect(Collectors.toMap(row -> row.get(row.get(0).isEmpty() ? 1 : 0), row -> row));
  }

  /** The tables of a file beside a class, by name, in their order. */
  public static Map<String, DeclaredTable> read(Class<?> beside, String file) {
    Map<String, DeclaredTable> tables = new LinkedHashMap<>();
    List<List<String>> rows = new ArrayList<>();
    String head = "";
    for (String line : (text(beside, file) + "\n[]").split("\n")) {
      if (line.startsWith("[")) {
        if (!head.isEmpty()) {
          int end = head.indexOf(']');
          String name = head.substring(1, end);
          tables.put(name, new DeclaredTable(name, head.substring(end + 1).strip(), rows));
        }
        head = line;
        rows.clear();
      } else if (!line.isBlank() && !line.startsWith("#")) {
        rows.add(List.of(BAR.split(line, -1)));
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
