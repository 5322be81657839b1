package sparewell.render;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;

/** Writes laid-out sheets and what hangs on them as parts of a package. */
final class SheetParts {
  private static final String OFFICE = "application/vnd.openxmlformats-officedocument.";

  private final Parts parts;
  private final RenderOptions options;
  private int sheets;
  private int tables;
  private int drawings;

  SheetParts(Parts parts, RenderOptions options) {
    this.parts = parts;
    this.options = options;
  }

  /** Adds the next sheet. */
  void add(Grid grid, Page page) {
    sheets++;
    String sheetPart = "xl/worksheets/sheet" + sheets + ".xml";
    parts.relate("xl/workbook.xml", "worksheet", "worksheets/sheet" + sheets + ".xml");
    String drawing = grid.drawn.isEmpty() ? "" : drawing(sheetPart, grid);
    String notes = grid.notes.isEmpty() ? "" : notes(sheetPart, grid);
    List<String> tableIds = new ArrayList<>();
    for (Grid.ListTable table : grid.tables) {
      tables++;
      String file = "tables/table" + tables + ".xml";
      parts.add("xl/" + file, OFFICE + "spreadsheetml.table+xml", table(table, tables));
      tableIds.add(parts.relate(sheetPart, "table", "../" + file));
    }
    byte[] content =
        SheetXml.part(grid, page, options, new SheetXml.Related(drawing, notes, tableIds));
    parts.add(sheetPart, OFFICE + "spreadsheetml.worksheet+xml", content);
  }

  private String notes(String sheetPart, Grid grid) {
    String comments = "comments" + sheets + ".xml";
    String shapes = "drawings/vmlDrawing" + sheets + ".vml";
    parts.add("xl/" + comments, OFFICE + "spreadsheetml.comments+xml", NotesXml.comments(grid));
    parts.add("xl/" + shapes, OFFICE + "vmlDrawing", NotesXml.shapes(grid, sheets));
    parts.relate(sheetPart, "comments", "../" + comments);
    return parts.relate(sheetPart, "vmlDrawing", "../" + shapes);
  }

  private String drawing(String sheetPart, Grid grid) {
    drawings++;
    String file = "drawings/drawing" + drawings + ".xml";
    Xml xml = new Xml().open("xdr:wsDr", "xmlns:xdr", Drawings.SHEET, "xmlns:a", Drawings.MAIN);
    AtomicInteger ids = new AtomicInteger(1);
    for (Grid.Drawn drawn : grid.drawn) {
      xml.open("xdr:oneCellAnchor").open("xdr:from");
      left(xml, grid, drawn.leftPoints());
      // A point down, so that no frame is drawn on the last line of the page before.
      xml.leafText("xdr:row", String.valueOf(drawn.row() - 1)).leafText("xdr:rowOff", "12700");
      xml.close().leaf("xdr:ext", "cx", drawn.width(), "cy", drawn.height());
      drawn.content().accept(new Grid.Anchor(xml, ids::incrementAndGet, parts, "xl/" + file));
      xml.leaf("xdr:clientData").close();
    }
    parts.add("xl/" + file, OFFICE + "drawing+xml", xml.close().bytes());
    return parts.relate(sheetPart, "drawing", "../" + file);
  }

  /** Column and place in it; a place behind a column's end would be drawn at its end. */
  private static void left(Xml xml, Grid grid, double points) {
    int column = 1;
    double left = points / grid.print;
    for (double wide = wide(grid, 1); left >= wide; wide = wide(grid, column)) {
      left -= wide;
      column++;
    }
    xml.leafText("xdr:col", String.valueOf(column - 1));
    xml.leafText(
        "xdr:colOff", String.valueOf(Math.round(left * grid.print * Measure.EMU_PER_POINT)));
  }

  private static double wide(Grid grid, int column) {
    return grid.width(column) * Measure.POINTS_PER_CHARACTER;
  }

  private static byte[] table(Grid.ListTable table, int id) {
    Xml xml = new Xml();
    String[] corners = table.cells().split(":");
    xml.open(
        "table",
        "xmlns",
        SheetXml.MAIN,
        "id",
        id,
        "name",
        table.name(),
        "displayName",
        table.name(),
        "ref",
        table.cells(),
        table.hasSums() ? "totalsRowCount" : "totalsRowShown",
        table.hasSums() ? 1 : 0);
    xml.leaf("autoFilter", "ref", corners[0] + ":" + lastFiltered(table, corners[1]));
    xml.open("tableColumns", "count", table.columns().size());
    for (int i = 0; i < table.columns().size(); i++) {
      String name = CellText.stored(table.columns().get(i));
      String sum = table.sums().get(i);
      if (!sum.isEmpty()) {
        xml.open("tableColumn", "id", i + 1, "name", name, "totalsRowFunction", "custom");
        xml.leafText("totalsRowFormula", sum).close();
      } else if (i == 0 && table.hasSums()) {
        xml.leaf("tableColumn", "id", 1, "name", name, "totalsRowLabel", TableBlock.TOTAL);
      } else {
        xml.leaf("tableColumn", "id", i + 1, "name", name);
      }
    }
    xml.close();
    xml.leaf(
        "tableStyleInfo",
        "name",
        "TableStyleLight1",
        "showFirstColumn",
        0,
        "showLastColumn",
        0,
        "showRowStripes",
        1,
        "showColumnStripes",
        0);
    return xml.close().bytes();
  }

  /** The filter leaves the row of sums out. */
  private static String lastFiltered(Grid.ListTable table, String corner) {
    String letters = corner.replaceAll("\\d", "");
    int row = Integer.parseInt(corner.replaceAll("\\D", ""));
    return letters + (table.hasSums() ? row - 1 : row);
  }
}
