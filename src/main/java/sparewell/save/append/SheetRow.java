package sparewell.save.append;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.save.append.Pieces.Piece;

/**
 * A row as a sheet's part holds it: its attributes, and the text of each of its cells.
 *
 * @param number counted from 1
 * @param attributes by name
 * @param cells text of each cell by column
 */
record SheetRow(int number, Map<String, String> attributes, Map<Integer, Cell> cells) {
  private static final Pattern ATTRIBUTE =
      Pattern.compile("\\s([\\w.:-]+)\\s*=\\s*(?:\"([^\"]*)\"|'([^']*)')");
  private static final Pattern CONTENT = Pattern.compile("<(?:[\\w.-]+:)?(?:v|is|f)[\\s>/]");

  /**
   * A cell.
   *
   * @param attributes by name, without its place
   * @param inside what stands between its tags; empty if nothing
   */
  record Cell(Map<String, String> attributes, String inside) {
    Optional<String> style() {
      return Optional.ofNullable(attributes.get("s"));
    }

    boolean holdsAnything() {
      return CONTENT.matcher(inside).find();
    }

    boolean formula() {
      return Pattern.compile("<(?:[\\w.-]+:)?f[\\s>/]").matcher(inside).find();
    }
  }

  /** A row that the sheet does not hold yet. */
  static SheetRow fresh(int number) {
    return new SheetRow(number, new TreeMap<>(), new TreeMap<>());
  }

  static SheetRow of(int number, Piece row, String prefix) {
    Map<Integer, Cell> cells = new TreeMap<>();
    Pieces found = new Pieces(row.inside(), prefix + "c");
    int column = 0;
    for (Optional<Piece> cell = found.next(); cell.isPresent(); cell = found.next()) {
      Map<String, String> attributes = cell.get().attributes();
      column =
          Optional.ofNullable(attributes.remove("r"))
              .flatMap(Area::of)
              .map(Area::firstColumn)
              .orElse(column + 1);
      cells.put(column, new Cell(attributes, cell.get().inside()));
    }
    return new SheetRow(number, row.attributes(), cells);
  }

  static Map<String, String> attributes(String tag) {
    Map<String, String> found = new TreeMap<>();
    Matcher m = ATTRIBUTE.matcher(tag);
    while (m.find()) {
      // As written: references such as &quot; stay what they are when it is written again.
      found.put(m.group(1), m.group(2) == null ? m.group(3).replace("\"", "&quot;") : m.group(2));
    }
    return found;
  }

  /** The format of its blank cells, where it has one of its own. */
  Optional<String> style() {
    boolean custom = attributes.getOrDefault("customFormat", "0").matches("1|true");
    return Optional.ofNullable(attributes.get("s")).filter(s -> custom);
  }

  void write(String prefix, StringBuilder out) {
    out.append('<').append(prefix).append("row r=\"").append(number).append('"');
    attributes.forEach(
        (name, value) -> {
          if (!name.equals("r") && !name.equals("spans")) { // spans are a hint that may be left out
            out.append(' ').append(name).append("=\"").append(value).append('"');
          }
        });
    out.append('>');
    cells.forEach(
        (column, cell) -> {
          out.append('<').append(prefix).append("c r=\"").append(Area.letters(column));
          out.append(number).append('"');
          cell.attributes()
              .forEach((n, v) -> out.append(' ').append(n).append("=\"").append(v).append('"'));
          if (cell.inside().isEmpty()) {
            out.append("/>");
          } else {
            out.append('>').append(cell.inside()).append("</").append(prefix).append("c>");
          }
        });
    out.append("</").append(prefix).append("row>");
  }
}
