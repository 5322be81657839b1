package sparewell.save.append;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A row of a sheet's part, counted from 1: its attributes by name, its cells by column. */
record SheetRow(int number, Map<String, String> attributes, Map<Integer, Cell> cells) {
  private static final Pattern ATTRIBUTE =
      Pattern.compile("\\s([\\w.:-]+)\\s*=\\s*(?:\"([^\"]*)\"|'([^']*)')");
  private static final Pattern CONTENT = Pattern.compile("<(?:[\\w.-]+:)?(?:v|is|f)[\\s>/]");

  /** A cell's attributes by name, without its place, and what stands between its tags. */
  record Cell(Map<String, String> attributes, String inside) {
    Optional<String> style() {
      return Optional.ofNullable(attributes.get("s"));
    }

    boolean holdsAnything() {
      return CONTENT.matcher(inside).find();
    }

    boolean formula() {
      return Recalculation.FORMULA.matcher(inside).find();
    }
  }

  static SheetRow fresh(int number) {
    return new SheetRow(number, new TreeMap<>(), new TreeMap<>());
  }

  /** A row of the sheet; {@code inside} stands between its tags, null if nothing. */
  static SheetRow of(int number, Map<String, String> attributes, String inside, String prefix) {
    Map<Integer, Cell> cells = new TreeMap<>();
    Matcher found = elements(inside == null ? "" : inside, prefix + "c");
    int column = 0;
    while (found.find()) {
      Map<String, String> cell = attributes(found.group(1));
      column =
          Optional.ofNullable(cell.remove("r"))
              .flatMap(Area::of)
              .map(Area::firstColumn)
              .orElse(column + 1);
      cells.put(column, new Cell(cell, found.group(2) == null ? "" : found.group(2)));
    }
    return new SheetRow(number, attributes, cells);
  }

  /** The elements of a name in a text, which do not hold each other: attributes, and inside. */
  static Matcher elements(String text, String qualifiedName) {
    String name = Pattern.quote(qualifiedName);
    return Pattern.compile(
            "<" + name + "((?:\\s[^>]*?)?)(?:/>|>(.*?)</" + name + "\\s*>)", Pattern.DOTALL)
        .matcher(text);
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
