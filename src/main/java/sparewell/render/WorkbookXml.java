package sparewell.render;

import java.util.List;

/** The workbook part: the list of sheets and the names for printing. */
final class WorkbookXml {
  private WorkbookXml() {}

  /** The workbook part; sheet n has relationship n. */
  static byte[] part(List<Grid> grids, boolean date1904) {
    Xml xml = new Xml().open("workbook", "xmlns", SheetXml.MAIN, "xmlns:r", SheetXml.RELATIONS);
    xml.leaf("workbookPr", "date1904", date1904 ? 1 : 0);
    xml.open("bookViews").leaf("workbookView", "activeTab", 0).close();
    xml.open("sheets");
    for (int i = 0; i < grids.size(); i++) {
      xml.leaf("sheet", "name", grids.get(i).name, "sheetId", i + 1, "r:id", "rId" + (i + 1));
    }
    xml.close().open("definedNames");
    for (int i = 0; i < grids.size(); i++) {
      Grid grid = grids.get(i);
      String sheet = Grid.quoted(grid.name) + "!";
      String area =
          Grid.fixedRange(grid.firstPrintedRow, 1, grid.lastPrintedRow, grid.lastPrintedColumn);
      xml.leafText("definedName", sheet + area, "name", "_xlnm.Print_Area", "localSheetId", i);
      if (grid.headingRow > 0) {
        String rows = sheet + "$" + grid.headingRow + ":$" + grid.headingRow;
        xml.leafText("definedName", rows, "name", "_xlnm.Print_Titles", "localSheetId", i);
      }
    }
    xml.close();
    return xml.close().bytes();
  }

  /** Title and language. */
  static byte[] properties(RenderOptions options) {
    return new Xml()
        .open(
            "cp:coreProperties",
            "xmlns:cp",
            "http://schemas.openxmlformats.org/package/2006/metadata/core-properties",
            "xmlns:dc",
            "http://purl.org/dc/elements/1.1/")
        .leafText("dc:title", options.workbookName())
        .leafText("dc:language", "en")
        .close()
        .bytes();
  }
}
