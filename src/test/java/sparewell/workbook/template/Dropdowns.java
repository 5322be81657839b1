package sparewell.workbook.template;

import java.util.ArrayList;
import java.util.List;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;

/**
 * Named lists that follow the angler's own sheets, for dropdowns.
 *
 * <p>A hidden sheet finds the last filled row of each list, so that the lists grow with the sheets,
 * may have gaps, and leave out the example rows. The formulas start from the header cell and whole
 * blocks, so that deleting the first row or putting a title above breaks nothing.
 */
final class Dropdowns {
  static final String SHEET = "Lists";

  /** Rows that a list may reach. */
  private static final int REACH = 3000;

  private static final int PLACES = 300;
  private static final List<InputSheet> LISTED =
      List.of(
          InputSheets.STYLES,
          InputSheets.BOXES,
          InputSheets.COMPARTMENTS,
          InputSheets.TRIPS,
          InputSheets.EVENTS);

  private Dropdowns() {}

  /** Name of the list a column's cells come from; empty where from none. */
  static String listOf(InputSheet sheet, InputColumn column) {
    if (column.refersTo().isEmpty()) {
      return "";
    }
    boolean looseToo = sheet != InputSheets.EVENTS && sheet != InputSheets.BOX_LOG;
    return column.refersTo().equals(InputSheets.BOXES.name()) && looseToo
        ? "PlaceList"
        : nameOf(column.refersTo());
  }

  private static String nameOf(String sheet) {
    return sheet.substring(0, sheet.length() - (sheet.equals("Boxes") ? 2 : 1)) + "List";
  }

  /** Adds the hidden sheet and the names. */
  static void add(XSSFWorkbook book) {
    XSSFSheet sheet = book.createSheet(SHEET);
    Row header = sheet.createRow(0);
    header.createCell(0).setCellValue("Boxes and compartments");
    header.createCell(2).setCellValue("List");
    header.createCell(3).setCellValue("Last row");
    header.createCell(4).setCellValue("Examples");
    List<String> places = new ArrayList<>();
    for (int i = 0; i < LISTED.size(); i++) {
      String name = LISTED.get(i).name();
      String block = name + "!$A$1:$A$" + REACH;
      Row row = sheet.createRow(i + 1);
      row.createCell(2).setCellValue(name);
      List<String> keys = keys(book.getSheet(name));
      int examples = (int) keys.stream().filter(key -> key.startsWith("Example:")).count();
      formula(
          row,
          3,
          "SUMPRODUCT(MAX((" + block + "<>\"\")*ROW(" + block + ")))-ROW(" + name + "!$A$1)+1",
          keys.size() + 1);
      formula(row, 4, "COUNTIF(" + block + ",\"Example:*\")", examples);
      String first = "2+" + SHEET + "!$E$" + (i + 2);
      String last = "MAX(" + first + "," + SHEET + "!$D$" + (i + 2) + ")";
      name(
          book,
          nameOf(name),
          "INDEX(" + block + "," + first + "):INDEX(" + block + "," + last + ")");
      if (name.equals("Boxes") || name.equals("Compartments")) {
        places.addAll(keys.subList(examples, keys.size()));
      }
    }
    addPlaces(book, sheet, places);
    book.setSheetHidden(book.getSheetIndex(sheet), true);
    sheet.setColumnWidth(0, 30 * 256);
    sheet.setColumnWidth(2, 16 * 256);
  }

  private static void addPlaces(XSSFWorkbook book, XSSFSheet sheet, List<String> places) {
    String boxes = "($D$3-1-$E$3)";
    String bays = "($D$4-1-$E$4)";
    for (int i = 0; i < PLACES; i++) {
      Row row = sheet.getRow(i + 1) == null ? sheet.createRow(i + 1) : sheet.getRow(i + 1);
      String box = "INDEX(Boxes!$A$1:$A$" + REACH + ",ROW()+$E$3)&\"\"";
      String bay = "INDEX(Compartments!$A$1:$A$" + REACH + ",ROW()-" + boxes + "+$E$4)&\"\"";
      String text =
          "IF(ROW()-1<="
              + boxes
              + ","
              + box
              + ",IF(ROW()-1<="
              + boxes
              + "+"
              + bays
              + ","
              + bay
              + ",\"\"))";
      row.createCell(0).setCellFormula(text);
      row.getCell(0).setCellValue(i < places.size() ? places.get(i) : "");
    }
    String count =
        boxes.replace("$D", SHEET + "!$D").replace("$E", SHEET + "!$E")
            + "+"
            + bays.replace("$D", SHEET + "!$D").replace("$E", SHEET + "!$E");
    String block = SHEET + "!$A$1:$A$" + (PLACES + 1);
    name(book, "PlaceList", "INDEX(" + block + ",2):INDEX(" + block + ",MAX(2,1+" + count + "))");
  }

  private static List<String> keys(XSSFSheet sheet) {
    List<String> keys = new ArrayList<>();
    for (int r = 1; r <= sheet.getLastRowNum(); r++) {
      Row row = sheet.getRow(r);
      keys.add(row == null || row.getCell(0) == null ? "" : row.getCell(0).getStringCellValue());
    }
    return keys;
  }

  private static void formula(Row row, int column, String formula, double cached) {
    row.createCell(column).setCellFormula(formula);
    row.getCell(column).setCellValue(cached);
  }

  private static void name(XSSFWorkbook book, String name, String formula) {
    Name range = book.createName();
    range.setNameName(name);
    range.setRefersToFormula(formula);
  }
}
