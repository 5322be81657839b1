package sparewell.workbook.template;

import java.util.HashMap;
import java.util.Map;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The few cell styles of the templates, each made once a workbook. */
final class CellLooks {
  static final byte[] INK = {0x26, 0x2E, 0x36};
  static final byte[] SLATE = {0x2F, 0x4A, 0x5C};
  static final byte[] MIST = {(byte) 0xD9, (byte) 0xE3, (byte) 0xE8};
  static final byte[] GREY = {0x76, 0x7C, (byte) 0x82};

  private static final String FONT = "Arial";
  private static final short POINTS = 10;

  /** Purpose of a cell. */
  enum Use {
    TITLE,
    TEXT,
    REQUIRED_HEADER,
    HEADER,
    BLANK,
    ENTRY,
    EXAMPLE,
    LABEL,
    REMARK
  }

  private record Key(Use use, String pattern, boolean left) {}

  private final XSSFWorkbook book;
  private final Map<Key, XSSFCellStyle> known = new HashMap<>();

  CellLooks(XSSFWorkbook book) {
    this.book = book;
    // Column widths count digits of this font; where it is missing, one as wide stands in for it.
    XSSFFont usual = book.getFontAt(0);
    usual.setFontName(FONT);
    usual.setFontHeightInPoints(POINTS);
  }

  XSSFCellStyle of(Use use) {
    return of(use, "General", true);
  }

  XSSFCellStyle of(Use use, String pattern, boolean left) {
    return known.computeIfAbsent(new Key(use, pattern, left), this::make);
  }

  private XSSFCellStyle make(Key key) {
    XSSFCellStyle style = book.createCellStyle();
    style.setDataFormat(book.createDataFormat().getFormat(key.pattern()));
    style.setVerticalAlignment(VerticalAlignment.CENTER);
    style.setAlignment(key.left() ? HorizontalAlignment.LEFT : HorizontalAlignment.RIGHT);
    boolean cell = key.use() != Use.TITLE && key.use() != Use.TEXT && key.use() != Use.LABEL;
    if (key.left() && cell) {
      style.setIndention((short) 1);
    }
    if (key.use() == Use.ENTRY || key.use() == Use.EXAMPLE) {
      style.setBorderBottom(BorderStyle.THIN);
      style.setBottomBorderColor(new XSSFColor(MIST));
    }
    XSSFFont font = book.createFont();
    font.setFontName(FONT);
    font.setFontHeightInPoints(POINTS);
    font.setColor(new XSSFColor(INK));
    switch (key.use()) {
      case TITLE -> {
        font.setFontHeightInPoints((short) 18);
        font.setBold(true);
        font.setColor(new XSSFColor(SLATE));
      }
      case TEXT -> style.setWrapText(true);
      case REQUIRED_HEADER -> {
        header(style, SLATE);
        font.setBold(true);
        font.setColor(new XSSFColor(new byte[] {-1, -1, -1}));
      }
      case HEADER -> {
        header(style, MIST);
        font.setBold(true);
      }
      case EXAMPLE -> {
        font.setItalic(true);
        font.setColor(new XSSFColor(GREY));
      }
      case LABEL -> font.setBold(true);
      case REMARK -> {
        style.setWrapText(true);
        font.setColor(new XSSFColor(GREY));
      }
      case BLANK, ENTRY -> {}
    }
    style.setFont(font);
    return style;
  }

  private static void header(XSSFCellStyle style, byte[] colour) {
    style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    style.setFillForegroundColor(new XSSFColor(colour));
    style.setWrapText(true);
    style.setVerticalAlignment(VerticalAlignment.TOP);
    style.setBorderBottom(BorderStyle.MEDIUM);
    style.setBottomBorderColor(new XSSFColor(SLATE));
  }
}
