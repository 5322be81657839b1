package sparewell.run;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.OwnParts;
import sparewell.save.OwnParts.CellFormat;
import sparewell.save.OwnSheet;
import sparewell.save.WorkbookSaver;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;

/**
 * Blank input sheets for a workbook that lacks them: a row of headings, and a date format where
 * dates go. They are the angler's from then on.
 *
 * @see "ECMA-376 part 1, section 18.3 (worksheets)"
 */
final class BlankSheets {
  private static final String TYPE =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
  private static final String FONT = "<sz val=\"11\"/><name val=\"Calibri\"/>";
  private static final int WIDTH = 16;

  private BlankSheets() {}

  static void add(WorkbookPackage book, List<InputSheet> sheets, Path copy) throws WorkbookRefused {
    OwnParts parts =
        OwnParts.of(book, sheets.stream().map(s -> OwnSheet.theirs(s.name())).toList());
    for (InputSheet sheet : sheets) {
      String part = parts.takePart("worksheets/", "sheet", ".xml");
      byte[] content = xml(sheet, parts).getBytes(StandardCharsets.UTF_8);
      parts.write(part, TYPE, out -> out.write(content));
      parts.sheet(sheet.name(), part, List.of());
    }
    WorkbookSaver.copyWithSheets(parts, copy);
  }

  private static String xml(InputSheet sheet, OwnParts parts) {
    int bold = format(parts, "General", 0, "<b/>");
    int date = format(parts, "yyyy-mm-dd", -1, "");
    StringBuilder columns = new StringBuilder();
    StringBuilder cells = new StringBuilder();
    int at = 0;
    for (InputColumn column : sheet.columns()) {
      at++;
      String style = column.kind() == InputColumn.Kind.DATE ? " style=\"" + date + "\"" : "";
      columns.append(
          String.format(
              "<col min=\"%d\" max=\"%d\" width=\"%d\"%s customWidth=\"1\"/>",
              at, at, WIDTH, style));
      cells.append(
          String.format(
              "<c r=\"%s1\" s=\"%d\" t=\"inlineStr\"><is><t>%s</t></is></c>",
              (char) ('A' + at - 1), bold, column.name()));
    }
    return "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
        + "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
        + "<sheetViews><sheetView workbookViewId=\"0\"><pane ySplit=\"1\" topLeftCell=\"A2\""
        + " activePane=\"bottomLeft\" state=\"frozen\"/></sheetView></sheetViews>"
        + "<cols>%s</cols><sheetData><row r=\"1\">%s</row></sheetData></worksheet>"
            .formatted(columns, cells);
  }

  private static int format(OwnParts parts, String pattern, int builtIn, String bold) {
    return parts.cellFormat(
        new CellFormat(
            pattern,
            builtIn,
            "<font>" + bold + FONT + "</font>",
            "<fill><patternFill patternType=\"none\"/></fill>",
            "<border><left/><right/><top/><bottom/><diagonal/></border>",
            ""));
  }
}
