package sparewell.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import sparewell.ooxml.NewSheets;
import sparewell.ooxml.NewSheets.DefinedName;
import sparewell.table.Table;

/** Writes laid-out sheets and what hangs on them as parts of the workbook. */
final class SheetParts {
  private static final String OFFICE = "application/vnd.openxmlformats-officedocument.";

  private final NewSheets book;
  private final Parts parts;
  private final RenderOptions options;
  private int sheets;

  SheetParts(NewSheets book, RenderOptions options) {
    this.book = book;
    this.parts = new Parts(book);
    this.options = options;
  }

  void write(Grid grid, Page page) {
    sheets++;
    String part = parts.take("worksheets/", "sheet", ".xml");
    String drawing = grid.drawn.isEmpty() ? "" : drawing(part, grid);
    String notes = grid.notes.isEmpty() ? "" : notes(part, grid);
    List<String> tables = new ArrayList<>();
    for (Grid.ListTable table : grid.tables) {
      String file = parts.take("tables/", "table", ".xml");
      int id = book.takeTableId();
      parts.write(file, OFFICE + "spreadsheetml.table+xml", xml -> table(xml, table, id));
      tables.add(parts.relate(part, "table", file));
    }
    SheetXml.Related related = new SheetXml.Related(drawing, notes, tables);
    parts.write(
        part,
        OFFICE + "spreadsheetml.worksheet+xml",
        xml -> SheetXml.write(xml, grid, page, options, related));
    book.sheet(grid.name, part, printed(grid));
  }

  /** The names by which spreadsheets know what is printed. */
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

  private String notes(String sheetPart, Grid grid) {
    String comments = parts.take("", "comments", ".xml");
    String shapes = parts.take("drawings/", "vmlDrawing", ".vml");
    int number = sheets;
    parts.write(
        comments, OFFICE + "spreadsheetml.comments+xml", xml -> NotesXml.comments(xml, grid));
    parts.write(shapes, OFFICE + "vmlDrawing", xml -> NotesXml.shapes(xml, grid, number));
    parts.relate(sheetPart, "comments", comments);
    return parts.relate(sheetPart, "vmlDrawing", shapes);
  }

  private String drawing(String sheetPart, Grid grid) {
    String file = parts.take("drawings/", "drawing", ".xml");
    Map<Grid.Drawn, String> charts = new LinkedHashMap<>();
    for (Grid.Drawn drawn : grid.drawn) {
      drawn.chart().ifPresent(plot -> charts.put(drawn, chart(file, plot)));
    }
    parts.write(
        file,
        OFFICE + "drawing+xml",
        xml -> {
          xml.open("xdr:wsDr xmlns:xdr='{}' xmlns:a='{}'", Xml.SHEET_DRAWING, Xml.DRAWING);
          AtomicInteger ids = new AtomicInteger(1);
          for (Grid.Drawn drawn : grid.drawn) {
            String chart = charts.getOrDefault(drawn, "");
            anchor(grid, drawn, new Grid.Anchor(xml, ids::incrementAndGet, chart));
          }
          xml.close();
        });
    return parts.relate(sheetPart, "drawing", file);
  }

  private String chart(String drawing, Plot plot) {
    String file = parts.take("charts/", "chart", ".xml");
    parts.write(file, OFFICE + "drawingml.chart+xml", xml -> new ChartXml(plot, xml).write());
    return parts.relate(drawing, "chart", file);
  }

  private static void anchor(Grid grid, Grid.Drawn drawn, Grid.Anchor anchor) {
    Xml xml = anchor.xml().open("xdr:oneCellAnchor").open("xdr:from");
    left(xml, grid, drawn.leftPoints());
    // A point down, so that no frame is drawn on the last line of the page before.
    xml.leafText("xdr:row", drawn.row() - 1).leafText("xdr:rowOff", "12700");
    xml.close().leaf("xdr:ext cx='{}' cy='{}'", drawn.width(), drawn.height());
    drawn.content().accept(anchor);
    xml.leaf("xdr:clientData").close();
  }

  /** Column and place in it; a place behind a column's end would be drawn at its end. */
  private static void left(Xml xml, Grid grid, double points) {
    int column = 1;
    double left = points / grid.print;
    while (left >= grid.points(column)) {
      left -= grid.points(column);
      column++;
    }
    xml.leafText("xdr:col", column - 1);
    xml.leafText("xdr:colOff", Math.round(left * grid.print * Measure.EMU_PER_POINT));
  }

  private static void table(Xml xml, Grid.ListTable table, int id) {
    String[] corners = table.cells().split(":");
    xml.open(
        "table xmlns='{}' id='{}' name='{}' displayName='{}' ref='{}' {}='{}'",
        Xml.SHEET,
        id,
        table.name(),
        table.name(),
        table.cells(),
        table.hasSums() ? "totalsRowCount" : "totalsRowShown",
        table.hasSums());
    if (table.filtered()) {
      xml.open("autoFilter ref='{}'", corners[0] + ":" + lastFiltered(table, corners[1]));
      for (int i = 0; i < table.columns().size(); i++) {
        if (!table.arrows().get(i)) {
          xml.leaf("filterColumn colId='{}' hiddenButton='1'", i);
        }
      }
      xml.close();
    }
    xml.open("tableColumns count='{}'", table.columns().size());
    for (int i = 0; i < table.columns().size(); i++) {
      String name = CellText.stored(table.columns().get(i));
      String sum = table.sums().get(i);
      if (!sum.isEmpty()) {
        xml.open("tableColumn id='{}' name='{}' totalsRowFunction='custom'", i + 1, name);
        xml.leafText("totalsRowFormula", sum).close();
      } else if (i == 0 && table.hasSums()) {
        xml.leaf("tableColumn id='1' name='{}' totalsRowLabel='{}'", name, Table.TOTAL);
      } else {
        xml.leaf("tableColumn id='{}' name='{}'", i + 1, name);
      }
    }
    xml.close();
    xml.leaf(
        "tableStyleInfo name='TableStyleLight1' showFirstColumn='0' showLastColumn='0' showRowStripes='1' showColumnStripes='0'");
    xml.close();
  }

  /** The filter leaves the row of sums out. */
  private static String lastFiltered(Grid.ListTable table, String corner) {
    String letters = corner.replaceAll("\\d", "");
    int row = Integer.parseInt(corner.replaceAll("\\D", ""));
    return letters + (table.hasSums() ? row - 1 : row);
  }
}
