package sparewell.save.append;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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

  /** Reads a row's attributes and what stands between its tags. */
  static SheetRow of(int number, String attributes, String inside, String prefix) {
    Pattern tag = Pattern.compile("<" + Pattern.quote(prefix) + "c((?:\\s[^>]*?)?)(/?)>");
    Pattern close = Pattern.compile("</" + Pattern.quote(prefix) + "c\\s*>");
    Matcher closing = close.matcher(inside);
    Map<Integer, Cell> cells = new TreeMap<>();
    Matcher cell = tag.matcher(inside);
    int column = 0;
    for (int from = 0; cell.find(from); ) {
      Map<String, String> named = attributes(cell.group(1));
      column =
          Optional.ofNullable(named.remove("r"))
              .flatMap(Area::of)
              .map(Area::firstColumn)
              .orElse(column + 1);
      int end = cell.end();
      String content = "";
      if (cell.group(2).isEmpty()) {
        if (!closing.find(end)) {
          throw new IllegalArgumentException("a cell without an end");
        }
        content = inside.substring(end, closing.start());
        end = closing.end();
      }
      cells.put(column, new Cell(named, content));
      from = end;
    }
    return new SheetRow(number, attributes(attributes), cells);
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
