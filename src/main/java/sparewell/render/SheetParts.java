package sparewell.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sparewell.ooxml.PartNames;
import sparewell.save.OwnParts;
import sparewell.save.OwnParts.DefinedName;
import sparewell.table.Table;

/** Writes laid-out sheets and what hangs on them as parts of the workbook. */
final class SheetParts {
  private static final int CHARACTERS_A_LINE = 34;
  private static final int SHAPES_A_SHEET = 1_024;
  private static final String OFFICE = "application/vnd.openxmlformats-officedocument.";

  private final OwnParts book;
  private final RenderOptions options;
  private final Map<String, List<String>> relationships = new HashMap<>();
  private int sheets;

  SheetParts(OwnParts book, RenderOptions options) {
    this.book = book;
    this.options = options;
  }

  void write(Grid grid, Page page) {
    sheets++;
    String part = book.takePart("worksheets/", "sheet", ".xml");
    String drawing = grid.drawn.isEmpty() ? "" : drawing(part, grid);
    String notes = grid.notes.isEmpty() ? "" : notes(part, grid);
    List<String> tables = new ArrayList<>();
    for (Grid.ListTable table : grid.tables) {
      String file = book.takePart("tables/", "table", ".xml");
      int id = book.takeTableId();
      write(file, OFFICE + "spreadsheetml.table+xml", xml -> table(xml, table, id));
      tables.add(relate(part, "table", file));
    }
    SheetXml.Related related = new SheetXml.Related(drawing, notes, tables);
    write(
        part,
        OFFICE + "spreadsheetml.worksheet+xml",
        xml -> SheetXml.write(xml, grid, page, options, related));
    book.sheet(grid.name, part, printed(grid));
  }

  private static List<DefinedName> printed(Grid grid) {
    String sheet = Grid.quoted(grid.name) + "!";
    String area =
        Grid.fixedRange(grid.firstPrintedRow, 1, grid.lastPrintedRow, grid.lastPrintedColumn);
    List<DefinedName> names = new ArrayList<>();
    names.add(new DefinedName("_xlnm.Print_Area", sheet + area));
    if (grid.headingRow > 0) {
      String rows = sheet + "$" + grid.headingRow + ":$" + grid.headingRow;
      names.add(new DefinedName("_xlnm.Print_Titles", rows));
    }
    return names;
  }

  /** Writes a part; what it refers to comes before it, and is related to it already. */
  private void write(String name, String contentType, Consumer<Xml> content) {
    book.write(name, contentType, out -> Xml.document(out, content));
    List<String> all = relationships.remove(name);
    if (all != null) {
      String joined = String.join("", all);
      book.write(
          PartNames.relationshipsOf(name),
          "",
          out -> Xml.document(out, xml -> xml.add("relationships", joined)));
    }
  }

  /** Relates a part that is not yet written to another; returns the relationship's id. */
  private String relate(String source, String type, String target) {
    List<String> all = relationships.computeIfAbsent(source, key -> new ArrayList<>());
    int number = all.size() + 1;
    all.add(Xml.filled("relationship", number, type, PartNames.absolute(target)));
    return "rId" + number;
  }

  private String notes(String sheetPart, Grid grid) {
    String comments = book.takePart("", "comments", ".xml");
    String shapes = book.takePart("drawings/", "vmlDrawing", ".vml");
    int number = sheets;
    write(comments, OFFICE + "spreadsheetml.comments+xml", xml -> texts(xml, grid));
    write(shapes, OFFICE + "vmlDrawing", xml -> boxes(xml, grid, number));
    relate(sheetPart, "comments", comments);
    return relate(sheetPart, "vmlDrawing", shapes);
  }

  private static void texts(Xml xml, Grid grid) {
    xml.add("notes", Xml.each(grid.notes, SheetParts::note));
  }

  private static String note(Grid.Note note) {
    String cell = Grid.reference(note.row(), note.column());
    return Xml.filled("note", cell, SheetXml.text(note.text()));
  }

  /** The boxes that show the notes. */
  private static void boxes(Xml xml, Grid grid, int sheet) {
    String all =
        IntStream.range(0, grid.notes.size())
            .mapToObj(i -> box(grid.notes.get(i), sheet * SHAPES_A_SHEET + i + 1))
            .collect(Collectors.joining());
    xml.add("note boxes", sheet, all);
  }

  private static String box(Grid.Note note, int id) {
    int high = (1 + note.text().length() / CHARACTERS_A_LINE) * 12 + 8;
    int column = note.column();
    int row = note.row() - 1;
    int lastRow = row + 2 + high / 15;
    return Xml.filled("note box", id, high, column, row, column + 3, lastRow, column - 1);
  }

  private String drawing(String sheetPart, Grid grid) {
    String file = book.takePart("drawings/", "drawing", ".xml");
    AtomicInteger ids = new AtomicInteger(1);
    String all =
        Xml.each(
            grid.drawn,
            drawn -> {
              String chart = drawn.chart().map(plot -> chart(file, plot)).orElse("");
              String content = drawn.content().apply(new Grid.Anchor(ids::incrementAndGet, chart));
              return anchor(grid, drawn, content);
            });
    write(file, OFFICE + "drawing+xml", xml -> xml.add("drawing", all));
    return relate(sheetPart, "drawing", file);
  }

  private String chart(String drawing, Plot plot) {
    String file = book.takePart("charts/", "chart", ".xml");
    write(
        file,
        OFFICE + "drawingml.chart+xml",
        xml -> new ChartXml(plot, plot.chart().kind()).write(xml));
    return relate(drawing, "chart", file);
  }

  /** Gives column and place in it, as a place behind a column's end would be drawn at its end. */
  private static String anchor(Grid grid, Grid.Drawn drawn, String content) {
    int column = 1;
    double left = drawn.leftPoints() / grid.print;
    while (left >= grid.points(column)) {
      left -= grid.points(column);
      column++;
    }
    long offset = Math.round(left * grid.print * Measure.EMU_PER_POINT);
    return Xml.filled(
        "anchor", column - 1, offset, drawn.row() - 1, drawn.width(), drawn.height(), content);
  }

  private static void table(Xml xml, Grid.ListTable table, int id) {
    String columns =
        IntStream.range(0, table.columns().size())
            .mapToObj(at -> column(table, at))
            .collect(Collectors.joining());
    xml.add(
        "table",
        id,
        table.name(),
        table.cells(),
        table.hasSums() ? "totalsRowCount" : "totalsRowShown",
        table.hasSums(),
        table.filtered() ? filter(table) : "",
        table.columns().size(),
        columns);
  }

  private static String column(Grid.ListTable table, int at) {
    String name = SheetXml.stored(table.columns().get(at));
    String sum = table.sums().get(at);
    if (!sum.isEmpty()) {
      return Xml.filled("table column with sum", at + 1, name, sum);
    }
    return at == 0 && table.hasSums()
        ? Xml.filled("table column beside sums", at + 1, name, Table.TOTAL)
        : Xml.filled("table column", at + 1, name);
  }

  /** Leaves the row of sums out. */
  private static String filter(Grid.ListTable table) {
    String[] corners = table.cells().split(":");
    String letters = corners[1].replaceAll("\\d", "");
    int last = Integer.parseInt(corners[1].replaceAll("\\D", "")) - (table.hasSums() ? 1 : 0);
    String hidden =
        IntStream.range(0, table.columns().size())
            .filter(at -> !table.arrows().get(at))
            .mapToObj(at -> Xml.filled("hidden arrow", at))
            .collect(Collectors.joining());
    return Xml.filled("filter", corners[0] + ":" + letters + last, hidden);
  }
}
