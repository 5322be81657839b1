package sparewell.save;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.DataConsolidateFunction;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFPivotTable;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import sparewell.ooxml.Zips;

/** Workbooks of many makers; how the files were made stands beside them. */
public final class Workbooks {
  public static final List<String> NAMES =
      List.of(
          "xlsxwriter.xlsx",
          "xlsxwriter.xlsm",
          "openpyxl.xlsx",
          "libreoffice-pivot.xlsx",
          "libreoffice-charts.xlsx",
          "office.xlsx",
          "poi.xlsx",
          "prefixed.xlsx",
          "wide.xlsx",
          "plain.xlsx",
          "odd.xlsx");

  private Workbooks() {}

  /** The bytes of one of them. */
  public static byte[] bytes(String name) throws IOException {
    return switch (name) {
      case "poi.xlsx" -> poi();
      case "prefixed.xlsx" -> prefixed();
      case "wide.xlsx" -> wide();
      case "plain.xlsx" -> plain();
      case "odd.xlsx" -> odd();
      default -> {
        try (InputStream in = Workbooks.class.getResourceAsStream("/fidelity/" + name)) {
          yield in.readAllBytes();
        }
      }
    };
  }

  private static byte[] poi() throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      XSSFSheet log = book.createSheet("Losses");
      String[][] rows = {{"Style", "Cause"}, {"jig", "snag"}, {"frog", "fish"}, {"jig", "fish"}};
      for (int r = 0; r < rows.length; r++) {
        log.createRow(r).createCell(0).setCellValue(rows[r][0]);
        log.getRow(r).createCell(1).setCellValue(rows[r][1]);
        if (r == 0) {
          log.getRow(r).createCell(2).setCellValue("Lost");
        } else {
          log.getRow(r).createCell(2).setCellValue(r);
        }
      }
      XSSFSheet sums = book.createSheet("Sums");
      XSSFPivotTable pivot =
          sums.createPivotTable(
              new AreaReference("A1:C4", book.getSpreadsheetVersion()),
              new CellReference("A3"),
              log);
      pivot.addRowLabel(0);
      pivot.addColumnLabel(DataConsolidateFunction.SUM, 2);
      var helper = log.getDataValidationHelper();
      log.addValidationData(
          helper.createValidation(
              helper.createExplicitListConstraint(new String[] {"snag", "fish"}),
              new CellRangeAddressList(1, 20, 1, 1)));
      var drawing = log.createDrawingPatriarch();
      ClientAnchor at = drawing.createAnchor(0, 0, 0, 0, 4, 1, 6, 4);
      drawing.createCellComment(at).setString(new XSSFRichTextString("a note"));
      drawing.createPicture(
          drawing.createAnchor(0, 0, 0, 0, 7, 1, 9, 4),
          book.addPicture(new byte[] {1, 2, 3}, XSSFWorkbook.PICTURE_TYPE_PNG));
      log.getRow(1).createCell(4).setCellFormula("SUM(C2:C4)");
      book.createName().setNameName("Lost_pieces");
      book.getName("Lost_pieces").setRefersToFormula("Losses!$C$2:$C$4");
      book.setActiveSheet(1);
      book.setSelectedTab(1);
      book.write(out);
      return out.toByteArray();
    }
  }

  /** Main namespace under a prefix, as some software kits write; absolute targets; no views. */
  private static byte[] prefixed() {
    Map<String, byte[]> parts = new LinkedHashMap<>(Zips.read(Zips.ordinary("Stock", "Trips")));
    for (String name : List.of("xl/workbook.xml", "xl/styles.xml", "xl/worksheets/sheet1.xml")) {
      parts.put(name, Zips.utf8(prefix(Zips.text(parts, name))));
    }
    Zips.edit(
        parts,
        "xl/workbook.xml",
        Zips.text(parts, "xl/workbook.xml")
            .replaceAll("(?s).*(<x:bookViews>.*</x:bookViews>).*", "$1"),
        "");
    Zips.edit(
        parts, "xl/_rels/workbook.xml.rels", "\"worksheets/sheet1", "\"/xl/worksheets/sheet1");
    return Zips.write(parts);
  }

  /** A styles part without any style: one empty element. */
  private static byte[] plain() {
    Map<String, byte[]> parts = new LinkedHashMap<>(Zips.read(Zips.ordinary("Stock", "Trips")));
    String styles = Zips.text(parts, "xl/styles.xml");
    parts.put("xl/styles.xml", Zips.utf8(styles.replaceFirst("(?s)(<styleSheet[^>]*)>.*", "$1/>")));
    return Zips.write(parts);
  }

  private static String prefix(String xml) {
    return xml.replaceAll("<(/?)([a-z])", "<$1x:$2")
        .replace("<?x:xml", "<?xml")
        .replace(
            "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml",
            "xmlns:x=\"http://schemas.openxmlformats.org/spreadsheetml");
  }

  /** Edited parts in UTF-16, with and without byte order mark as the rules allow. */
  private static byte[] wide() {
    Map<String, byte[]> parts =
        new LinkedHashMap<>(Zips.read(Zips.ordinary("Stock", "Tageb\u00fccher \ud83d\udc1f")));
    for (String name : List.of("xl/workbook.xml", "xl/styles.xml", "[Content_Types].xml")) {
      String text =
          Zips.text(parts, name).replaceFirst("encoding=\"UTF-8\"", "encoding=\"UTF-16\"");
      parts.put(name, ("\ufeff" + text).getBytes(StandardCharsets.UTF_16LE));
    }
    return Zips.write(parts);
  }

  /**
   * No styles, unusual folders and names, a chain of calculation, Latin-1 text, no relationships
   * default.
   */
  private static byte[] odd() {
    Map<String, byte[]> parts = new LinkedHashMap<>(Zips.read(Zips.ordinary("Stock", "Trips")));
    String rels = "xl/_rels/workbook.xml.rels";
    parts.remove("xl/styles.xml");
    parts.put(
        rels,
        Zips.utf8(
            Zips.text(parts, rels)
                .replaceAll("<Relationship [^>]*styles.xml\"[^>]*/>", "")
                .replace("worksheets/sheet1.xml", "../the%20cells/Eins.XML")));
    parts.put(
        "[Content_Types].xml",
        Zips.utf8(
            Zips.text(parts, "[Content_Types].xml")
                .replaceAll("<Override [^>]*styles.xml\"[^>]*/>", "")
                .replace("/xl/worksheets/sheet1.xml", "/the%20cells/eins.xml")
                .replace("/xl/workbook.xml", "/odd/b\u00fcch.xml")));
    parts.put("the cells/Eins.XML", parts.remove("xl/worksheets/sheet1.xml"));
    String book =
        Zips.text(parts, "xl/workbook.xml")
            .replace("UTF-8", "ISO-8859-1")
            .replace("Trips", "F\u00e4nge");
    parts.remove("xl/workbook.xml");
    parts.put("odd/b\u00fcch.xml", book.getBytes(StandardCharsets.ISO_8859_1));
    parts.put(
        "odd/_rels/b\u00fcch.xml.rels",
        Zips.utf8(
            Zips.text(parts, rels)
                .replace("\"worksheets/", "\"../xl/worksheets/")
                .replace("\"sharedStrings", "\"/xl/sharedStrings")
                .replace("\"../the", "\"/the")));
    parts.remove(rels);
    Zips.edit(parts, "_rels/.rels", "xl/workbook.xml", "odd/b\u00fcch.xml");
    return Zips.write(parts);
  }
}
