package sparewell.workbook.template;

import java.time.LocalDate;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Turns the demo into the workbook of a sloppy hand: the mistakes that people and spreadsheet
 * programs make, each once or twice, so that every kind of reading finding can be seen.
 */
final class MessyBook {
  /** As a spreadsheet program shows a typed 3/8 that it took for a date. */
  private static final String DAY_MONTH = "d-mmm";

  private final XSSFWorkbook book;

  private MessyBook(XSSFWorkbook book) {
    this.book = book;
  }

  /** Spoils a demo workbook without tables. */
  static void spoil(XSSFWorkbook book) {
    MessyBook messy = new MessyBook(book);
    messy.settings();
    messy.styles();
    messy.stock();
    messy.places();
    messy.trips();
    messy.losses();
    messy.restocks();
    messy.events();
    messy.boat();
    messy.sheets();
  }

  private void settings() {
    text("Settings", 3, "Value", "2026-03-15");
    text("Settings", 12, "Value", "1.7"); // fill factor above 1
    text("Settings", 7, "Value", "24 or so"); // planning hours
    append("Settings", "Cary at least", 2);
    append("Settings", "Favourite colour", "green");
  }

  private void styles() {
    date("Styles", 2, "Weight each", LocalDate.of(2026, 3, 8), DAY_MONTH); // typed 3/8
    text("Styles", 3, "Weight each", "14 g");
    text("Styles", 4, "Weight each", "2 stone");
    text("Styles", 5, "Weight each", "7/16");
    text("Styles", 6, "Pack price", "9,99");
    text("Styles", 7, "Counted in", "boxes");
    number("Styles", 8, "Chance wanted", 95);
    number("Styles", 9, "Chance wanted", 1);
    blank("Styles", 11, "Family"); // the row is left out, and all that names its style
    blank("Styles", 17, "Pieces per pack"); // stick worm, counted in packs
    append("Styles", "football  JIG", "Jigs", 0.5);
    append("Styles", "Blade spoon", "Wire baits", 0.5, "pieces");
  }

  private void stock() {
    number("Stock", 2, "Count", 2.5);
    formulaError("Stock", 3, "Count");
    cell("Stock", 4, "Count").setCellValue(true);
    date("Stock", 5, "Count", LocalDate.of(2026, 3, 4), DAY_MONTH);
    blank("Stock", 6, "Count");
    number("Stock", 7, "Count", -1);
    text("Stock", 8, "Count", "4");
    text("Stock", 9, "Style", "Squarebil crankbait");
    text("Stock", 10, "Box", "Shed");
    formula("Stock", 11, "Count", "1+2");
    formula("Stock", 12, "Count", "CELL(\"width\",A1)");
    date("Stock", 14, "Size", LocalDate.of(2026, 1, 2), DAY_MONTH); // typed 1/2
    date("Stock", 15, "Colour", LocalDate.of(2026, 5, 1), "mmm-yy");
    date("Stock", 20, "Counted on", LocalDate.of(2026, 6, 1), CellForm.DATE);
    text("Stock", 22, "Weight each", "12 g");
    append("Stock", "Tube", "4 in", "Smoke", "Tubes", 1);
    append("Stock", "Tube", "4 in", "Brown", "Tubes", 1.33);
    append("Stock", "Blade spoon", "", "Silver shad", "Lipless", 2);
    // Counted long ago, and more lost since than was there.
    appendDate("Stock", "Popper", "", "Plum", "Poppers", 1, LocalDate.of(2025, 1, 1));
    header("Stock", "Weight each", "Weight each (grain)");
    int extra = book.getSheet("Stock").getRow(0).getLastCellNum();
    book.getSheet("Stock").getRow(0).createCell(extra).setCellValue("Bought from");
  }

  private void places() {
    number("Boxes", 2, "Length", 0);
    text("Boxes", 3, "At hand", "maybe");
    text("Boxes", 5, "Empty weight", "14 oz");
    text("Boxes", 6, "Length", "35 cm");
    append("Boxes", "Lipless", "Bow locker", 14, 9, 2);
    append("Boxes", "Odds and ends", "Port raer locker", 14, 9, 2);
    text("Boxes", 7, "Tape colour", "yellow_x0007_");
    number("Compartments", 3, "From transom", 17_800); // inches and something else
    book.getSheet("Boxes").getRow(8).setZeroHeight(true);
  }

  private void trips() {
    text("Trips", 3, "Hours", "about six");
    date("Trips", 4, "Hours", LocalDate.of(1900, 1, 1), "h:mm");
    cell("Trips", 4, "Hours").setCellValue(0.25); // 6:00
    number("Trips", 5, "Hours", 0);
    text("Trips", 7, "Date", "26 Oct 2024");
    number("Trips", 8, "Days", 0);
    text("Trips", 9, "Hours", "6,0");
    text("Trips", 10, "Cover", "rocck");
    number("Trips", 12, "Hours", 650_000);
    append("Trips", "Lost day", "last Sunday", "Pellam Pool", 3);
    append("Trips", "Holiday", "8/7/2025", "Pellam Pool", 3);
    trip("Dawn", LocalDate.of(2025, 8, 30)); // two trips of one date
    trip("Dusk", LocalDate.of(2025, 8, 30));
    trip("", LocalDate.of(2025, 9, 6)); // no name, and a named trip of its date
    trip("Tomorrow", LocalDate.of(2026, 5, 30));
    XSSFSheet sheet = book.getSheet("Trips");
    sheet.getRow(0).createCell(7).setCellValue("Note");
  }

  private void losses() {
    number("Losses", 3, "Lost", -2);
    number("Losses", 4, "Lost", 1.5);
    blank("Losses", 5, "Lost");
    text("Losses", 6, "Lost", "two");
    text("Losses", 7, "Style", "Fotball jig");
    text("Losses", 8, "Style", "Swimming ostrich");
    text("Losses", 9, "Cause", "pike");
    text("Losses", 10, "Ran out", "perhaps");
    text("Losses", 11, "Colour", "Tartan");
    text("Losses", 12, "Trip", "2025-08-30"); // two trips have this date
    append("Losses", "Quillet 2025-09-06", "Blade spoon", "", "", 1, "snag");
    append("Losses", "Quillet 2025-09-06", "Tube", "", "", 2, "fish");
    append("Losses", "Quillet 2025-09-06", "Popper", "", "Plum", 3, "fish");
    append("Losses", "Quillet 2025-10-04", "Popper", "", "", 2, "fish");
    append("Losses", "Tomorrow", "Tube", "4 in", "Smoke", 1, "snag");
  }

  private void restocks() {
    append("Restocks", null, "Tube", "4 in", "Smoke", "Frogs", 1);
    date("Restocks", lastRow("Restocks"), "Date", LocalDate.of(2026, 2, 20), CellForm.DATE);
    XSSFSheet sheet = book.getSheet("Restocks");
    sheet.shiftRows(0, sheet.getLastRowNum(), 2);
    sheet.createRow(0).createCell(0).setCellValue("What I bought");
  }

  private void events() {
    number("Events", 6, "Hours", 99_999);
    text("Events", 4, "Box", "Dya box");
    text("Event plan", 9, "Hours", "all day");
  }

  private void boat() {
    blank("Boat", 10, "Value");
    append("Boat", "Plate wieght", 1750);
  }

  private void sheets() {
    book.createSheet("Event-plan").createRow(0).createCell(0).setCellValue("Event");
    book.setSheetName(book.getSheetIndex("Loads"), "Laods");
    book.createSheet("Shopping 2024").createRow(0).createCell(0).setCellValue("milk, line, hooks");
    book.setSheetHidden(book.getSheetIndex("Compartments"), true);
  }

  private void trip(String name, LocalDate date) {
    append("Trips", name, "", "Pellam Pool", 3);
    date("Trips", lastRow("Trips"), "Date", date, CellForm.DATE);
  }

  private XSSFCell cell(String sheet, int row, String header) {
    XSSFSheet page = book.getSheet(sheet);
    int column = column(page, header);
    XSSFCell cell = page.getRow(row - 1).getCell(column);
    return cell == null ? page.getRow(row - 1).createCell(column) : cell;
  }

  private static int column(XSSFSheet sheet, String header) {
    for (int c = 0; c < sheet.getRow(0).getLastCellNum(); c++) {
      if (sheet.getRow(0).getCell(c).getStringCellValue().startsWith(header)) {
        return c;
      }
    }
    throw new IllegalArgumentException(sheet.getSheetName() + " has no column " + header);
  }

  private int lastRow(String sheet) {
    return book.getSheet(sheet).getLastRowNum() + 1;
  }

  private void header(String sheet, String header, String text) {
    XSSFSheet page = book.getSheet(sheet);
    page.getRow(0).getCell(column(page, header)).setCellValue(text);
  }

  private void text(String sheet, int row, String header, String text) {
    cell(sheet, row, header).setCellValue(text);
  }

  private void number(String sheet, int row, String header, double number) {
    cell(sheet, row, header).setCellValue(number);
  }

  private void blank(String sheet, int row, String header) {
    cell(sheet, row, header).setBlank();
  }

  private void formula(String sheet, int row, String header, String formula) {
    XSSFCell cell = cell(sheet, row, header);
    cell.setBlank();
    cell.setCellFormula(formula);
  }

  private void formulaError(String sheet, int row, String header) {
    XSSFCell cell = cell(sheet, row, header);
    cell.setCellFormula("1/0");
    cell.setCellErrorValue(FormulaError.DIV0);
  }

  private void date(String sheet, int row, String header, LocalDate date, String pattern) {
    XSSFCell cell = cell(sheet, row, header);
    CellStyle style = book.createCellStyle();
    style.cloneStyleFrom(cell.getCellStyle());
    style.setDataFormat(book.createDataFormat().getFormat(pattern));
    cell.setCellStyle(style);
    cell.setCellValue(DateUtil.getExcelDate(date));
  }

  private void appendDate(
      String sheet,
      String style,
      String size,
      String colour,
      String box,
      int count,
      LocalDate countedOn) {
    append(sheet, style, size, colour, box, count);
    date(sheet, lastRow(sheet), "Counted on", countedOn, CellForm.DATE);
  }

  private void append(String sheet, Object... values) {
    XSSFSheet page = book.getSheet(sheet);
    Row row = page.createRow(page.getLastRowNum() + 1);
    for (int c = 0; c < values.length; c++) {
      if (values[c] instanceof Number number) {
        row.createCell(c).setCellValue(number.doubleValue());
      } else if (values[c] instanceof String text && !text.isEmpty()) {
        row.createCell(c).setCellValue(text);
      }
    }
  }
}
