package sparewell.workbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.util.CellReference;
import sparewell.ooxml.Zips;

/**
 * A workbook whose cells are read and typed into as another program does, with none of our own code
 * and without the time that a library takes for the rest of the workbook. Rows and columns are
 * counted from 1.
 */
public final class OpenBook {
  private static final Pattern ROW = tag("row");
  private static final Pattern CELL = tag("c");
  private static final Pattern TEXT = tag("t");
  private static final Pattern SHEET = tag("sheet");

  private final Path file;
  private final Map<String, byte[]> parts;
  private final List<String> shared;
  private final List<Boolean> framed;
  private final Map<String, String> partOf = new LinkedHashMap<>();
  private final Map<String, TreeMap<Integer, Row>> open = new LinkedHashMap<>();

  private OpenBook(Path file) throws IOException {
    this.file = file;
    parts = Zips.read(Files.readAllBytes(file));
    shared =
        parts.containsKey("xl/sharedStrings.xml") ? inner("xl/sharedStrings.xml", "si") : List.of();
    List<Boolean> borders =
        inner("xl/styles.xml", "border").stream()
            .map(border -> border.matches("(?s).*<left style=\"(?!none).*"))
            .toList();
    String formats = Zips.text(parts, "xl/styles.xml").replaceFirst("(?s).*<cellXfs", "");
    framed =
        tag("xf")
            .matcher(formats)
            .results()
            .map(xf -> borders.get(Integer.parseInt(attribute(xf, "borderId"))))
            .toList();
    Map<String, String> targets =
        all("xl/_rels/workbook.xml.rels", tag("Relationship")).stream()
            .collect(Collectors.toMap(of -> attribute(of, "Id"), of -> attribute(of, "Target")));
    for (MatchResult sheet : all("xl/workbook.xml", SHEET)) {
      String target = targets.get(attribute(sheet, "r:id"));
      partOf.put(
          plain(attribute(sheet, "name")),
          target.startsWith("/") ? target.substring(1) : "xl/" + target);
    }
  }

  /** Reads a workbook without prefixes, whose parts have their usual names. */
  public static OpenBook of(Path file) {
    try {
      return new OpenBook(file);
    } catch (IOException disk) {
      throw new UncheckedIOException(disk);
    }
  }

  /** Names of the sheets, as the tabs stand. */
  public List<String> sheets() {
    return List.copyOf(partOf.keySet());
  }

  /** Rows of a sheet, from the top; those without any cell too. */
  public List<Row> rows(String sheet) {
    return List.copyOf(rowsOf(sheet).values());
  }

  private TreeMap<Integer, Row> rowsOf(String sheet) {
    return open.computeIfAbsent(
        sheet,
        name -> {
          TreeMap<Integer, Row> rows = new TreeMap<>();
          for (MatchResult row : all(partOf.get(name), ROW)) {
            Row read = new Row(row);
            rows.put(read.number, read);
          }
          return rows;
        });
  }

  /** Types values into a new row below the last; null leaves a cell out. */
  public void add(String sheet, Object... values) {
    Row row = new Row(rowsOf(sheet).lastKey() + 1);
    rowsOf(sheet).put(row.number, row);
    for (int i = 0; i < values.length; i++) {
      if (values[i] != null) {
        row.cell(i + 1).set(values[i]);
      }
    }
  }

  /** Puts all rows but the first into another order; their cells and looks go along. */
  public void shuffle(String sheet, Random dice) {
    TreeMap<Integer, Row> rows = rowsOf(sheet);
    List<Row> order = new ArrayList<>(rows.values());
    Collections.shuffle(order.subList(1, order.size()), dice);
    List<Integer> numbers = List.copyOf(rows.keySet());
    for (int i = 0; i < numbers.size(); i++) {
      rows.put(numbers.get(i), order.get(i).at(numbers.get(i)));
    }
  }

  /** Saves in the file's place. */
  public void save() {
    open.forEach(
        (sheet, rows) -> {
          String[] around =
              Zips.text(parts, partOf.get(sheet)).split("(?s)<sheetData>.*</sheetData>");
          String data = rows.values().stream().map(Row::xml).collect(Collectors.joining());
          parts.put(
              partOf.get(sheet),
              Zips.utf8(around[0] + "<sheetData>" + data + "</sheetData>" + around[1]));
        });
    try {
      Files.write(file, Zips.write(parts));
    } catch (IOException disk) {
      throw new UncheckedIOException(disk);
    }
  }

  /** A row and its cells. */
  public final class Row {
    private final int number;
    private final String attributes;
    private final TreeMap<Integer, Cell> cells = new TreeMap<>();

    private Row(int number) {
      this.number = number;
      attributes = " r=\"" + number + "\"";
    }

    private Row(MatchResult row) {
      number = Integer.parseInt(attribute(row, "r"));
      attributes = row.group(1);
      CELL.matcher(body(row))
          .results()
          .forEach(
              cell -> {
                Cell read = new Cell(cell);
                cells.put((int) new CellReference(read.at).getCol() + 1, read);
              });
    }

    /** Its number. */
    public int number() {
      return number;
    }

    /** Cells that stand in the file, blank ones too, by column. */
    public Map<Integer, Cell> cells() {
      return cells;
    }

    /** A cell, a new one where there is none. */
    public Cell cell(int column) {
      return cells.computeIfAbsent(
          column, at -> new Cell(CellReference.convertNumToColString(at - 1) + number));
    }

    /** Text of a cell; empty where there is none. */
    public String text(int column) {
      return cells.containsKey(column) ? cells.get(column).text() : "";
    }

    private Row at(int other) {
      Row moved = new Row(other);
      cells.forEach(
          (column, cell) ->
              moved.cells.put(
                  column, new Cell(CellReference.convertNumToColString(column - 1) + other, cell)));
      return moved;
    }

    private String xml() {
      String inside = cells.values().stream().map(cell -> cell.xml).collect(Collectors.joining());
      return "<row" + attributes + ">" + inside + "</row>";
    }
  }

  /** A cell. */
  public final class Cell {
    private final String at;
    private final String style;
    private String xml;

    private Cell(String at) {
      this.at = at;
      style = "";
      xml = "";
    }

    private Cell(MatchResult cell) {
      at = attribute(cell, "r");
      style = attribute(cell, "s");
      xml = cell.group();
    }

    private Cell(String at, Cell like) {
      this.at = at;
      style = like.style;
      xml = like.xml.replaceFirst(" r=\"[^\"]*\"", " r=\"" + at + "\"");
    }

    /** Reference of the cell, such as B3. */
    public String at() {
      return at;
    }

    /** Returns whether it has the frame of those to type into. */
    public boolean framed() {
      return !style.isEmpty() && framed.get(Integer.parseInt(style));
    }

    /** Returns whether it holds a text. */
    public boolean isText() {
      return xml.matches("(?s)<c [^>]*t=\"(s|str|inlineStr)\".*");
    }

    /** Its text, or its number without a format; empty where it is blank. */
    public String text() {
      MatchResult cell = CELL.matcher(xml).results().findFirst().orElse(null);
      if (cell == null) {
        return "";
      }
      String kind = attribute(cell, "t");
      if (kind.equals("inlineStr")) {
        return texts(body(cell));
      }
      String value =
          tag("v").matcher(body(cell)).results().findFirst().map(OpenBook::body).orElse("");
      if (kind.equals("s")) {
        return texts(shared.get(Integer.parseInt(value)));
      }
      return value.matches("-?\\d+\\.0") && !isText() ? value.replace(".0", "") : plain(value);
    }

    /** The day of a date. */
    public LocalDate day() {
      return DateUtil.getLocalDateTime(Double.parseDouble(text())).toLocalDate();
    }

    /** Types a text, a number or a date; an empty text clears it. */
    public void set(Object value) {
      String look = style.isEmpty() ? "" : " s=\"" + style + "\"";
      String begin = "<c r=\"" + at + "\"" + look;
      if (value instanceof LocalDate day) {
        set(DateUtil.getExcelDate(day));
      } else if (value instanceof Number) {
        xml = begin + "><v>" + value + "</v></c>";
      } else if (value.toString().isEmpty()) {
        xml = begin + "/>";
      } else {
        xml =
            begin
                + " t=\"inlineStr\"><is><t xml:space=\"preserve\">"
                + PlainBook.escaped(value.toString())
                + "</t></is></c>";
      }
    }
  }

  /** An element with its attributes as group 1, and as group 2 what stands in it. */
  private static Pattern tag(String name) {
    return Pattern.compile("(?s)<" + name + "(?=[ />])([^>]*?)(?:/>|>(.*?)</" + name + ">)");
  }

  private List<MatchResult> all(String part, Pattern element) {
    return element.matcher(Zips.text(parts, part)).results().toList();
  }

  private List<String> inner(String part, String element) {
    return all(part, tag(element)).stream().map(OpenBook::body).toList();
  }

  private static String body(MatchResult element) {
    return element.group(2) == null ? "" : element.group(2);
  }

  private static String attribute(MatchResult element, String name) {
    String begin = " " + name + "=\"";
    String all = element.group(1);
    int from = all.indexOf(begin);
    return from < 0
        ? ""
        : all.substring(from + begin.length(), all.indexOf('"', from + begin.length()));
  }

  private static String texts(String xml) {
    return TEXT.matcher(xml).results().map(text -> plain(body(text))).collect(Collectors.joining());
  }

  private static String plain(String xml) {
    return xml.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&apos;", "'")
        .replace("&#10;", "\n")
        .replace("&amp;", "&");
  }
}
