package sparewell.render;

import java.util.List;
import java.util.SortedMap;
import java.util.regex.Pattern;
import sparewell.table.Layout;

/** A grid as the sheet part of a package. */
final class SheetXml {
  private static final double WIDEST = 255;
  private static final double MM_PER_INCH = 25.4;

  /** Text that a reader would take for an escaped character. */
  private static final Pattern LOOKS_ESCAPED = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");

  private SheetXml() {}

  /** Ids of the relationships to a sheet's own parts; empty where it has none. */
  record Related(String drawing, String notes, List<String> tables) {}

  static void write(Xml xml, Grid grid, Page page, RenderOptions options, Related related) {
    int lastColumn = grid.rows.values().stream().mapToInt(SortedMap::lastKey).max().orElse(1);
    xml.add(
        "sheet start",
        Grid.range(1, 1, grid.lastRow(), Math.max(1, lastColumn)),
        frozen(grid.rowsInView),
        Layout.ROW_POINTS * grid.print,
        columns(grid));
    grid.rows.forEach((row, cells) -> row(xml, grid, row, cells));
    xml.add(
        "sheet end",
        Xml.counted("merged", grid.merged, cells -> Xml.filled("merged cells", cells)),
        EntryXml.rules(grid.entries),
        links(grid.links),
        grid.exactSize,
        inches(page.sideMm()),
        inches(page.rightMm()),
        inches(page.topMm()),
        inches(page.bottomMm()),
        inches(page.headerMm()),
        page.paper().code,
        grid.onOnePage,
        page.landscape() ? "landscape" : "portrait",
        grid.exactSize ? "" : headerAndFooter(options),
        Xml.counted("breaks", grid.pageBreaks, row -> Xml.filled("break", row)),
        related("drawing of the sheet", related.drawing()),
        related("notes of the sheet", related.notes()),
        Xml.counted(
            "tables of the sheet", related.tables(), id -> related("table of the sheet", id)));
  }

  private static String related(String piece, String id) {
    return id.isEmpty() ? "" : Xml.filled(piece, id);
  }

  private static String frozen(int rows) {
    return rows == 0 ? "" : Xml.filled("frozen", rows, Grid.reference(rows + 1, 1));
  }

  private static String columns(Grid grid) {
    String all =
        Xml.each(
            List.copyOf(grid.widths.entrySet()),
            column -> {
              double width = column.getValue() * grid.print * grid.widthFactor;
              return Xml.filled("column", column.getKey(), hundredths(Math.min(WIDEST, width)));
            });
    return all.isEmpty() ? "" : Xml.filled("columns", all);
  }

  private static String links(List<Grid.Link> links) {
    String all = Xml.each(links, link -> Xml.filled("link", link.cells(), link.location()));
    return all.isEmpty() ? "" : Xml.filled("links", all);
  }

  private static void row(Xml xml, Grid grid, int row, SortedMap<Integer, Grid.Filled> cells) {
    Double height = grid.heights.get(row);
    if (height == null) {
      xml.add("row start", row);
    } else {
      double points = Math.min(Measure.HIGHEST_ROW_POINTS, height * grid.print);
      xml.add("high row start", row, hundredths(points));
    }
    cells.forEach((column, cell) -> cell(xml, Grid.reference(row, column), cell));
    xml.add("row end");
  }

  private static void cell(Xml xml, String place, Grid.Filled cell) {
    Object value = cell.value();
    if (value == null) {
      xml.add("blank cell", place, cell.look());
    } else if (value instanceof Double number) {
      xml.add("number cell", place, cell.look(), number(number));
    } else if (value instanceof Grid.Formula formula) {
      xml.add("formula cell", place, cell.look(), formula.text(), number(formula.value()));
    } else if (value instanceof Grid.RichText rich) {
      xml.add("text cell", place, cell.look(), Xml.each(rich.runs(), SheetXml::run));
    } else {
      xml.add("text cell", place, cell.look(), text((String) value));
    }
  }

  private static String run(Grid.Run run) {
    return Xml.filled("run", run.bold() ? "<b/>" : "", run.points(), text(run.text()));
  }

  private static String headerAndFooter(RenderOptions options) {
    return Xml.filled(
        "header and footer",
        options.workbookName().replace("&", "&&"),
        options.date().replace("&", "&&"));
  }

  private static String inches(double millimetres) {
    return number(Math.round(millimetres / MM_PER_INCH * 1_000) / 1_000.0);
  }

  private static String hundredths(double value) {
    return number(Math.round(value * 100) / 100.0);
  }

  /** A text element; blanks at its ends are kept only if it says so. */
  static String text(String text) {
    String stored = stored(text);
    boolean same = stored.equals(stored.strip()) && stored.indexOf('\n') < 0;
    return Xml.filled(same ? "text" : "text with blanks", stored);
  }

  /** The text with look-alikes of escapes escaped, and line ends as line feeds. */
  static String stored(String text) {
    String unix = text.replace("\r\n", "\n").replace('\r', '\n');
    return unix.contains("_x") ? LOOKS_ESCAPED.matcher(unix).replaceAll("_x005F_") : unix;
  }

  /** A number as the file format wants it; whole ones without a point. */
  static String number(double value) {
    boolean whole = value == Math.rint(value) && Math.abs(value) < 1e15;
    return whole ? String.valueOf((long) value) : String.valueOf(value);
  }
}
