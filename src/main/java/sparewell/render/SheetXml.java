package sparewell.render;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import sparewell.table.Layout;

/** A grid as the sheet part of a package. */
final class SheetXml {
  private static final double WIDEST = 255;
  private static final double MM_PER_INCH = 25.4;

  private SheetXml() {}

  /** Ids of the relationships to a sheet's own parts; empty where it has none. */
  record Related(String drawing, String notes, List<String> tables) {}

  static void write(Xml xml, Grid grid, Page page, RenderOptions options, Related related) {
    xml.open("worksheet xmlns='{}' xmlns:r='{}'", Xml.SHEET, Xml.RELATIONS);
    xml.open("sheetPr").leaf("pageSetUpPr fitToPage='1'").close();
    int lastColumn =
        Math.max(1, grid.rows.values().stream().mapToInt(SortedMap::lastKey).max().orElse(1));
    xml.leaf("dimension ref='{}'", Grid.range(1, 1, grid.lastRow(), lastColumn));
    view(xml, grid);
    xml.leaf(
        "sheetFormatPr defaultRowHeight='{}' customHeight='1'", Layout.ROW_POINTS * grid.print);
    columns(xml, grid);
    xml.open("sheetData");
    grid.rows.forEach((row, cells) -> row(xml, grid, row, cells));
    xml.close();
    if (!grid.merged.isEmpty()) {
      xml.open("mergeCells count='{}'", grid.merged.size());
      grid.merged.forEach(range -> xml.leaf("mergeCell ref='{}'", range));
      xml.close();
    }
    EntryXml.write(xml, grid.entries);
    if (!grid.links.isEmpty()) {
      xml.open("hyperlinks");
      grid.links.forEach(
          link -> xml.leaf("hyperlink ref='{}' location='{}'", link.cells(), link.location()));
      xml.close();
    }
    paper(xml, grid, page, options);
    if (!related.drawing().isEmpty()) {
      xml.leaf("drawing r:id='{}'", related.drawing());
    }
    if (!related.notes().isEmpty()) {
      xml.leaf("legacyDrawing r:id='{}'", related.notes());
    }
    if (!related.tables().isEmpty()) {
      xml.open("tableParts count='{}'", related.tables().size());
      related.tables().forEach(id -> xml.leaf("tablePart r:id='{}'", id));
      xml.close();
    }
    xml.close();
  }

  private static void view(Xml xml, Grid grid) {
    xml.open("sheetViews").open("sheetView showGridLines='0' workbookViewId='0'");
    if (grid.rowsInView > 0) {
      String below = Grid.reference(grid.rowsInView + 1, 1);
      xml.leaf(
          "pane ySplit='{}' topLeftCell='{}' activePane='bottomLeft' state='frozen'",
          grid.rowsInView,
          below);
      xml.leaf("selection pane='bottomLeft' activeCell='{}' sqref='{}'", below, below);
    }
    xml.close(2);
  }

  private static void columns(Xml xml, Grid grid) {
    if (grid.widths.isEmpty()) {
      return;
    }
    xml.open("cols");
    for (Map.Entry<Integer, Double> column : grid.widths.entrySet()) {
      xml.leaf(
          "col min='{}' max='{}' width='{}' customWidth='1'",
          column.getKey(),
          column.getKey(),
          hundredths(Math.min(WIDEST, column.getValue() * grid.print * grid.widthFactor)));
    }
    xml.close();
  }

  private static void row(Xml xml, Grid grid, int row, SortedMap<Integer, Grid.Filled> cells) {
    Double height = grid.heights.get(row);
    if (height == null) {
      xml.open("row r='{}'", row);
    } else {
      xml.open(
          "row r='{}' ht='{}' customHeight='1'",
          row,
          hundredths(Math.min(Measure.HIGHEST_ROW_POINTS, height * grid.print)));
    }
    cells.forEach((column, cell) -> cell(xml, Grid.reference(row, column), cell));
    xml.close();
  }

  private static void cell(Xml xml, String reference, Grid.Filled cell) {
    Object value = cell.value();
    if (value == null) {
      xml.leaf("c r='{}' s='{}'", reference, cell.look());
    } else if (value instanceof Double number) {
      xml.open("c r='{}' s='{}'", reference, cell.look());
      xml.leafText("v", number(number)).close();
    } else if (value instanceof Grid.Formula formula) {
      xml.open("c r='{}' s='{}'", reference, cell.look());
      xml.leafText("f", formula.text()).leafText("v", number(formula.value())).close();
    } else if (value instanceof Grid.RichText rich) {
      xml.open("c r='{}' s='{}' t='inlineStr'", reference, cell.look()).open("is");
      rich.runs().forEach(run -> run(xml, run));
      xml.close(2);
    } else {
      xml.open("c r='{}' s='{}' t='inlineStr'", reference, cell.look()).open("is");
      CellText.write(xml, (String) value);
      xml.close(2);
    }
  }

  private static void run(Xml xml, Grid.Run run) {
    xml.open("r").open("rPr");
    if (run.bold()) {
      xml.leaf("b");
    }
    xml.leaf("sz val='{}'", run.points()).leaf("color rgb='FF000000'");
    xml.leaf("rFont val='Arial'").leaf("family val='2'").close();
    CellText.write(xml, run.text());
    xml.close();
  }

  private static void paper(Xml xml, Grid grid, Page page, RenderOptions options) {
    int centred = grid.exactSize ? 1 : 0;
    xml.leaf("printOptions horizontalCentered='{}' verticalCentered='0'", centred);
    xml.leaf(
        "pageMargins left='{}' right='{}' top='{}' bottom='{}' header='{}' footer='{}'",
        inches(page.sideMm()),
        inches(page.rightMm()),
        inches(page.topMm()),
        inches(page.bottomMm()),
        inches(page.headerMm()),
        inches(page.headerMm()));
    String lie = page.landscape() ? "landscape" : "portrait";
    int paper = page.paper().code;
    xml.leaf(
        "pageSetup paperSize='{}' fitToWidth='1' fitToHeight='{}' orientation='{}'",
        paper,
        grid.onOnePage,
        lie);
    if (!grid.exactSize) {
      xml.open("headerFooter");
      xml.leafText(
          "oddHeader", "&L&8" + printed(options.workbookName()) + "&R&8" + printed(options.date()));
      xml.leafText("oddFooter", "&L&8&A&R&8Page &P of &N").close();
    }
    if (!grid.pageBreaks.isEmpty()) {
      int count = grid.pageBreaks.size();
      xml.open("rowBreaks count='{}' manualBreakCount='{}'", count, count);
      grid.pageBreaks.forEach(row -> xml.leaf("brk id='{}' max='16383' man='1'", row));
      xml.close();
    }
  }

  /** Text in a header; the blank keeps leading digits from being read as a size. */
  private static String printed(String text) {
    return " " + text.replace("&", "&&");
  }

  private static String inches(double millimetres) {
    return number(Math.round(millimetres / MM_PER_INCH * 1_000) / 1_000.0);
  }

  private static String hundredths(double value) {
    return number(Math.round(value * 100) / 100.0);
  }

  /** A number as the file format wants it; whole ones without a point. */
  static String number(double value) {
    boolean whole = value == Math.rint(value) && Math.abs(value) < 1e15;
    return whole ? String.valueOf((long) value) : String.valueOf(value);
  }
}
