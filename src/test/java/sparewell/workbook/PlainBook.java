package sparewell.workbook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.util.CellReference;
import sparewell.ooxml.Zips;

/** The parts of a plain workbook of text grids, as {@link Books} describes them. */
final class PlainBook {
  private static final String HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  private static final String MAIN =
      " xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\""
          + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\">";
  private static final String TYPE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
  private static final String CONTENT =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.";

  private static final Pattern DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");

  /** Cell format 1 shows a date. */
  private static final String STYLES =
      HEAD
          + "<styleSheet"
          + MAIN
          + "<numFmts count=\"1\"><numFmt numFmtId=\"164\" formatCode=\"yyyy-mm-dd\"/></numFmts>"
          + "<fonts count=\"1\"><font><sz val=\"11\"/><name val=\"Calibri\"/></font></fonts>"
          + "<fills count=\"2\"><fill><patternFill patternType=\"none\"/></fill>"
          + "<fill><patternFill patternType=\"gray125\"/></fill></fills>"
          + "<borders count=\"1\"><border><left/><right/><top/><bottom/></border></borders>"
          + "<cellStyleXfs count=\"1\"><xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\"/>"
          + "</cellStyleXfs><cellXfs count=\"2\">"
          + "<xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\" xfId=\"0\"/>"
          + "<xf numFmtId=\"164\" fontId=\"0\" fillId=\"0\" borderId=\"0\" xfId=\"0\""
          + " applyNumberFormat=\"1\"/></cellXfs></styleSheet>";

  private final Map<String, Integer> texts = new LinkedHashMap<>();

  private PlainBook() {}

  /** The parts by name; the sheet at position n (from 1) is {@code xl/worksheets/sheetn.xml}. */
  static Map<String, byte[]> parts(Map<String, String> sheets) {
    PlainBook book = new PlainBook();
    Map<String, byte[]> parts = new LinkedHashMap<>();
    StringBuilder types = new StringBuilder();
    StringBuilder list = new StringBuilder();
    List<String> relations = new ArrayList<>();
    sheets.forEach(
        (name, grid) -> {
          String part = "worksheets/sheet" + (relations.size() + 1) + ".xml";
          types.append(override(part, "worksheet"));
          relations.add(relation(relations.size() + 1, "worksheet", part));
          list.append(
                  "<sheet name=\"%s\" sheetId=\"%d\"".formatted(escaped(name), relations.size()))
              .append(" r:id=\"rId" + relations.size() + "\"/>");
          parts.put("xl/" + part, Zips.utf8(book.sheet(grid)));
        });
    relations.add(relation(relations.size() + 1, "styles", "styles.xml"));
    relations.add(relation(relations.size() + 1, "sharedStrings", "sharedStrings.xml"));
    types.append(override("styles.xml", "styles"));
    types.append(override("sharedStrings.xml", "sharedStrings"));
    types.append(override("workbook.xml", "sheet.main"));
    parts.put(
        "xl/workbook.xml",
        Zips.utf8(
            HEAD
                + "<workbook"
                + MAIN
                + "<workbookPr/><bookViews><workbookView/></bookViews><sheets>"
                + list
                + "</sheets></workbook>"));
    parts.put("xl/_rels/workbook.xml.rels", relations(String.join("", relations)));
    parts.put("_rels/.rels", relations(relation(1, "officeDocument", "xl/workbook.xml")));
    parts.put("xl/styles.xml", Zips.utf8(STYLES));
    parts.put("xl/sharedStrings.xml", Zips.utf8(book.sharedStrings()));
    parts.put(
        "[Content_Types].xml",
        Zips.utf8(
            HEAD
                + "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                + "<Default Extension=\"rels\""
                + " ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                + types
                + "</Types>"));
    return parts;
  }

  private static String override(String part, String kind) {
    return "<Override PartName=\"/xl/" + part + "\" ContentType=\"" + CONTENT + kind + "+xml\"/>";
  }

  private static String relation(int id, String kind, String target) {
    return "<Relationship Id=\"rId%d\" Type=\"%s%s\" Target=\"%s\"/>"
        .formatted(id, TYPE, kind, target);
  }

  private static byte[] relations(String relations) {
    return Zips.utf8(
        HEAD
            + "<Relationships"
            + " xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
            + relations
            + "</Relationships>");
  }

  private String sheet(String grid) {
    StringBuilder rows = new StringBuilder();
    String last = "A1";
    int row = 0;
    for (String line : grid.split("\n", -1)) {
      rows.append("<row r=\"").append(++row).append("\">");
      String[] cells = line.split("\\|", -1);
      for (int i = 0; i < cells.length; i++) {
        if (!cells[i].isEmpty()) {
          last = CellReference.convertNumToColString(i) + row;
          rows.append("<c r=\"").append(last).append('"').append(cell(cells[i])).append("</c>");
        }
      }
      rows.append("</row>");
    }
    String used = "<dimension ref=\"A1:" + last + "\"/>";
    return HEAD + "<worksheet" + MAIN + used + "<sheetData>" + rows + "</sheetData></worksheet>";
  }

  /** From the end of the reference on: other attributes, and what the cell holds. */
  private String cell(String text) {
    if (text.startsWith("'")) {
      return shared(text.substring(1));
    }
    if (text.startsWith("=")) {
      return "><f>" + escaped(text.substring(1)) + "</f>";
    }
    if (text.equals("TRUE") || text.equals("FALSE")) {
      return " t=\"b\"><v>" + (text.equals("TRUE") ? 1 : 0) + "</v>";
    }
    if (DATE.matcher(text).matches()) {
      return " s=\"1\"><v>" + DateUtil.getExcelDate(LocalDate.parse(text)) + "</v>";
    }
    if (NUMBER.matcher(text).matches()) {
      return "><v>" + Double.parseDouble(text) + "</v>";
    }
    return shared(text);
  }

  private String shared(String text) {
    return " t=\"s\"><v>" + texts.computeIfAbsent(text, added -> texts.size()) + "</v>";
  }

  private String sharedStrings() {
    StringBuilder all = new StringBuilder(HEAD + "<sst" + MAIN);
    texts
        .keySet()
        .forEach(
            text ->
                all.append("<si><t xml:space=\"preserve\">")
                    .append(escaped(text))
                    .append("</t></si>"));
    return all.append("</sst>").toString();
  }

  static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
  }
}
