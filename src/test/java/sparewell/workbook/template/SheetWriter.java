package sparewell.workbook.template;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputColumn.Kind;
import sparewell.workbook.InputSheet;
import sparewell.workbook.template.CellLooks.Use;

/** Writes one input sheet: headers with notes, rows, formats, rules, table and print set-up. */
final class SheetWriter {
  /** Three lines, or two above the filter's arrow. */
  private static final double HEADER_POINTS = 46;

  private static final float ROW_POINTS = 15;

  /** Characters that go across a standing page, a little shrunk. */
  private static final int NARROW = 125;

  private static final double MARGIN_INCHES = 0.5;
  private static final double CHARACTER = 256;
  private static final int WIDEST = 44;
  private static final int NOTE_CHARACTERS = 90;

  private final XSSFWorkbook book;
  private final CellLooks looks;
  private final UnitSystem units;
  private final InputSheet form;
  private final XSSFSheet sheet;
  private final EntryRules rules;
  private final int[] widths;
  private final boolean tables;

  /**
   * Begins a sheet.
   *
   * @param tables whether its rows become a table of the spreadsheet program
   */
  SheetWriter(
      XSSFWorkbook book, CellLooks looks, UnitSystem units, InputSheet form, boolean tables) {
    this.book = book;
    this.looks = looks;
    this.units = units;
    this.form = form;
    this.tables = tables;
    this.sheet = book.createSheet(form.name());
    this.rules = new EntryRules(sheet);
    sheet.setDefaultRowHeightInPoints(ROW_POINTS);
    this.widths = new int[form.columns().size()];
  }

  /** Header of a column as the template shows it. */
  static String header(InputSheet form, InputColumn column, UnitSystem units) {
    String unit = CellForm.of(column.kind(), units).unit();
    return unit.isEmpty() ? column.name() : column.name() + " (" + unit + ")";
  }

  /** Writes a sheet of columns. */
  void columns(List<List<Object>> rows) {
    headers();
    for (int c = 0; c < form.columns().size(); c++) {
      InputColumn column = form.columns().get(c);
      CellForm cellForm = CellForm.of(column.kind(), units);
      widths[c] = Math.max(widths[c], cellForm.widthChars());
      sheet.setDefaultColumnStyle(c, looks.of(Use.BLANK, cellForm.pattern(), cellForm.left()));
      rules.add(
          1,
          EntryRules.LAST_ROW - 1,
          c,
          column.kind(),
          column.choices(),
          Dropdowns.listOf(form, column),
          column.name(),
          message(column));
    }
    for (int r = 0; r < rows.size(); r++) {
      List<Object> row = rows.get(r);
      boolean example = row.get(0).toString().startsWith(Examples.MARK);
      for (int c = 0; c < form.columns().size(); c++) {
        CellForm cellForm = CellForm.of(form.columns().get(c).kind(), units);
        put(
            r + 1,
            c,
            c < row.size() ? row.get(c) : "",
            form.columns().get(c).kind(),
            cellForm.pattern(),
            cellForm.left(),
            example ? Use.EXAMPLE : Use.ENTRY);
      }
    }
    finish(Math.max(1, rows.size()), form.columns().size() - 1, 0);
  }

  /**
   * Writes a sheet of names and values.
   *
   * @param given a name and a value a row, in the same order; empty where the template's own values
   *     are wanted
   */
  void named(List<InputColumn> lines, List<List<Object>> given) {
    headers();
    boolean noted = form.columns().size() > 2;
    if (!noted) {
      XSSFCell header = sheet.getRow(0).createCell(2);
      header.setCellValue("Note");
      header.setCellStyle(looks.of(Use.HEADER));
    }
    for (int i = 0; i < lines.size(); i++) {
      InputColumn line = lines.get(i);
      CellForm cellForm = CellForm.of(line.kind(), units);
      Standard standard = Standard.of(line, units);
      Object value = given.isEmpty() ? "" : given.get(i).get(1);
      String unit = standard.unit().isEmpty() ? cellForm.unit() : standard.unit();
      String name = unit.isEmpty() ? line.name() : line.name() + " (" + unit + ")";
      put(i + 1, 0, name, Kind.TEXT, CellForm.TEXT, true, Use.LABEL);
      put(
          i + 1,
          1,
          value.equals("") ? standard.value() : value,
          line.kind(),
          line.kind() == Kind.LENGTH ? "General" : cellForm.pattern(),
          true,
          Use.BLANK);
      String message = message(line);
      put(i + 1, 2, message, Kind.TEXT, "General", true, Use.REMARK);
      if (message.length() > NOTE_CHARACTERS) {
        sheet.getRow(i + 1).setHeightInPoints(2 * sheet.getDefaultRowHeightInPoints());
      }
      rules.add(i + 1, i + 1, 1, line.kind(), line.choices(), "", line.name(), message);
    }
    widths[1] = 14;
    finish(lines.size(), 2, NOTE_CHARACTERS);
    sheet.setColumnWidth(2, (int) (NOTE_CHARACTERS * CHARACTER));
  }

  private void headers() {
    Row row = sheet.createRow(0);
    row.setHeightInPoints((float) HEADER_POINTS);
    XSSFDrawing drawing = sheet.createDrawingPatriarch();
    for (int c = 0; c < form.columns().size(); c++) {
      InputColumn column = form.columns().get(c);
      String text = header(form, column, units);
      XSSFCell cell = (XSSFCell) row.createCell(c);
      cell.setCellValue(text);
      cell.setCellStyle(looks.of(column.required() ? Use.REQUIRED_HEADER : Use.HEADER));
      widths[c] = Math.max(longestWord(text) + 4, text.length() / 2 + 8);
      Comment note = drawing.createCellComment(new XSSFClientAnchor(0, 0, 0, 0, c, 1, c + 3, 6));
      note.setString(
          new XSSFRichTextString((c == 0 ? form.purpose() + " " : "") + message(column)));
      note.setAuthor("Sparewell");
      cell.setCellComment(note);
    }
  }

  private String message(InputColumn column) {
    String must = column.required() ? " Must be filled." : "";
    String blank = column.standard().isEmpty() ? "" : " Blank: " + column.standard() + ".";
    boolean us = units == UnitSystem.US;
    String fraction =
        switch (column.kind()) {
          case ITEM_MASS -> us ? " Fractions such as 3/8 are fine." : " In ounces: 3/8 oz.";
          case LENGTH -> us ? " Fractions such as 3/8 are fine." : " In inches: 7 1/2 in.";
          default -> "";
        };
    return column.meaning() + fraction + must + blank;
  }

  private void put(
      int row, int column, Object value, Kind kind, String pattern, boolean left, Use use) {
    Row line = sheet.getRow(row) == null ? sheet.createRow(row) : sheet.getRow(row);
    XSSFCell cell = (XSSFCell) line.createCell(column);
    cell.setCellStyle(looks.of(use, pattern, left));
    if (value instanceof Mass mass) {
      boolean item = kind == Kind.ITEM_MASS;
      cell.setCellValue(
          rounded(mass.in(item ? CellForm.itemUnit(units) : CellForm.loadUnit(units)), kind));
    } else if (value instanceof Length length) {
      LengthUnit unit = CellForm.lengthUnit(units);
      cell.setCellValue(rounded(length.in(unit), kind));
    } else if (value instanceof Number number) {
      cell.setCellValue(number.doubleValue());
    } else if (value instanceof LocalDate date) {
      cell.setCellValue(DateUtil.getExcelDate(date));
    } else if (!value.equals("")) {
      cell.setCellValue(value.toString());
      if (use != Use.REMARK) {
        widths[column] = Math.max(widths[column], Math.min(WIDEST, value.toString().length() + 3));
      }
    }
  }

  private double rounded(double value, Kind kind) {
    boolean us = units == UnitSystem.US;
    int digits =
        switch (kind) {
          case ITEM_MASS -> us ? 4 : 1;
          case LOAD_MASS -> 2;
          default -> us ? 3 : 1;
        };
    return BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_UP).doubleValue();
  }

  private void finish(int rows, int last, int besides) {
    for (int c = 0; c < widths.length; c++) {
      sheet.setColumnWidth(c, (int) (widths[c] * CHARACTER));
    }
    sheet.createFreezePane(1, 1);
    if (tables) {
      table(rows, last);
    }
    print(IntStream.of(widths).sum() + besides > NARROW);
  }

  private void table(int rows, int last) {
    XSSFTable table =
        sheet.createTable(
            new AreaReference(
                new CellReference(0, 0),
                new CellReference(rows, last),
                SpreadsheetVersion.EXCEL2007));
    table.setName(form.name().replace(" ", "") + "Rows");
    table.setDisplayName(form.name().replace(" ", "") + "Rows");
    table.getCTTable().addNewAutoFilter().setRef(table.getCTTable().getRef());
    table.setStyleName("TableStyleLight1");
    table.getCTTable().getTableStyleInfo().setShowRowStripes(true);
  }

  private void print(boolean lying) {
    sheet.setRepeatingRows(CellRangeAddress.valueOf("1:1"));
    sheet.setFitToPage(true);
    sheet.getPrintSetup().setLandscape(lying);
    for (PageMargin side : List.of(PageMargin.LEFT, PageMargin.RIGHT)) {
      sheet.setMargin(side, MARGIN_INCHES);
    }
    sheet.getPrintSetup().setFitWidth((short) 1);
    sheet.getPrintSetup().setFitHeight((short) 0);
    sheet
        .getPrintSetup()
        .setPaperSize(
            units == UnitSystem.US ? PrintSetup.LETTER_PAPERSIZE : PrintSetup.A4_PAPERSIZE);
    sheet.getHeader().setLeft(form.name());
    sheet.getFooter().setLeft("&F");
    sheet.getFooter().setRight("&P / &N");
  }

  private static int longestWord(String text) {
    int longest = 0;
    for (String word : text.split(" ")) {
      longest = Math.max(longest, word.length());
    }
    return longest;
  }
}
