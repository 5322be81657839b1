package sparewell.workbook.template;

import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import sparewell.units.UnitSystem;
import sparewell.workbook.template.CellLooks.Use;

/** The sheet that tells a first-time user what to do, in five steps. */
final class ReadMeFirst {
  static final String SHEET = "Read me first";

  private record Step(String sheets, String target, String text) {}

  private static final Step[] STEPS = {
    new Step(
        "1  Settings, Styles",
        "Styles",
        "Settings can stay as they are. Then each style of lure once, with a family of styles that"
            + " are lost alike."),
    new Step(
        "2  Stock, Boxes, Compartments",
        "Stock",
        "One row for each size and colour in each box. Then the boxes, and the compartment each"
            + " stands in; then the compartments, with their distance from the transom, and storage"
            + " at home with Ashore = yes."),
    new Step(
        "3  Trips, Style hours, Losses",
        "Trips",
        "After each trip: one row in Trips, and one row in Losses for whatever you lost; how long you"
            + " threw each style if you can. Or fill the sheet Trip card, which the first run adds, and"
            + " post it."),
    new Step(
        "4  Events, Event plan, Loads, Boat",
        "Events",
        "What is coming, and what you mean to throw. Loads and Boat if you want the weights of the"
            + " whole boat."),
    new Step(
        "5  Run the analyser",
        "",
        "Save and close this workbook, run sparewell analyse on it, and open it again: the answer"
            + " stands on After trip, a new sheet before all others. It says what to do now, in"
            + " order; each line leads to its row. Tick Done there, save, close, and run sparewell"
            + " post.")
  };

  private static final String[] REMARKS = {
    "Dark headers must be filled, light ones may stay blank. Rest the pointer on a header to see"
        + " what belongs there.",
    "Grey rows that begin with Example: are left out by the analyser. Type over them or delete them.",
    "Weights and sizes may be typed as fractions, such as 3/8 or 1 1/2. Columns may be moved, and"
        + " columns and sheets of your own added.",
    "The analyser never changes your sheets. It adds After trip before them and further sheets of"
        + " its own behind them, and keeps a backup of the workbook. Only post and import add rows"
        + " to yours.",
    "The capacity plate of the boat and its manual always come first. Wash hands after handling"
        + " lead, and check local rules on small lead tackle."
  };

  private ReadMeFirst() {}

  static void add(XSSFWorkbook book, CellLooks looks, UnitSystem units, TemplateKind kind) {
    XSSFSheet sheet = book.createSheet(SHEET);
    sheet.setDisplayGridlines(false);
    sheet.setFitToPage(true);
    sheet.getPrintSetup().setLandscape(true);
    sheet.getPrintSetup().setFitHeight((short) 1);
    sheet
        .getPrintSetup()
        .setPaperSize(
            units == UnitSystem.US ? PrintSetup.LETTER_PAPERSIZE : PrintSetup.A4_PAPERSIZE);
    sheet.setColumnWidth(0, 3 * 256);
    sheet.setColumnWidth(1, 36 * 256);
    sheet.setColumnWidth(2, 82 * 256);
    int at = 1;
    cell(sheet, at, 1, "Your tackle in five steps", looks, Use.TITLE, 30);
    at++;
    cell(sheet, at, 1, subtitle(kind), looks, Use.LABEL, 22);
    at += 2;
    for (Step step : STEPS) {
      XSSFCell label = cell(sheet, at, 1, step.sheets(), looks, Use.LABEL, 48);
      if (!step.target().isEmpty()) {
        XSSFHyperlink link = book.getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
        link.setAddress("'" + step.target() + "'!A1");
        label.setHyperlink(link);
      }
      cell(sheet, at, 2, step.text(), looks, Use.TEXT, 48);
      at++;
    }
    at++;
    cell(sheet, at, 1, "Good to know", looks, Use.LABEL, 22);
    for (String remark : REMARKS) {
      cell(sheet, at, 2, remark, looks, Use.REMARK, 32);
      at++;
    }
  }

  private static String subtitle(TemplateKind kind) {
    return switch (kind) {
      case BLANK ->
          "Start at the top; the first three steps are enough for a first answer. After a run, begin"
              + " at the first sheet.";
      case DEMO ->
          "A demo: an invented angler, boat, waters and log. After a run, begin at the first sheet,"
              + " After trip.";
      case MESSY ->
          "A demo with mistakes on purpose. After a run, the first sheet, After trip, says what to"
              + " mend.";
    };
  }

  private static XSSFCell cell(
      XSSFSheet sheet, int row, int column, String text, CellLooks looks, Use use, int height) {
    Row line = sheet.getRow(row) == null ? sheet.createRow(row) : sheet.getRow(row);
    line.setHeightInPoints(Math.max(height, column == 2 ? line.getHeightInPoints() : 0));
    XSSFCell cell = (XSSFCell) line.createCell(column);
    cell.setCellValue(text);
    cell.setCellStyle(looks.of(use));
    return cell;
  }
}
