package sparewell.save;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.ConditionalFormattingRule;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.XDDFBarChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTCell;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTRst;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.STCellType;

/** A scratch workbook with sheets as rich as ours will be: looks, notes, tables, charts, rules. */
public final class OwnWorkbook {
  private OwnWorkbook() {}

  /** Writes it. */
  public static Path write(Path file, boolean date1904, List<String> names) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      if (date1904) {
        book.getCTWorkbook().getWorkbookPr().setDate1904(true);
      }
      for (String name : names) {
        fill(book, book.createSheet(name), names.indexOf(name));
      }
      for (Sheet sheet : book) {
        textsInTheirCells(sheet);
      }
      try (OutputStream out = Files.newOutputStream(file)) {
        book.write(out);
      }
    }
    return file;
  }

  private static void fill(XSSFWorkbook book, XSSFSheet sheet, int number) {
    XSSFFont bold = book.createFont();
    bold.setBold(true);
    bold.setFontName("Arial");
    XSSFCellStyle head = book.createCellStyle();
    head.setFont(bold);
    head.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    head.setFillForegroundColor(IndexedColors.LIGHT_GREEN.getIndex());
    head.setBorderBottom(BorderStyle.THIN);
    XSSFCellStyle weight = book.createCellStyle();
    weight.setDataFormat(book.createDataFormat().getFormat("0.00\" lb\""));
    XSSFCellStyle day = book.createCellStyle();
    day.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
    XSSFCell top = sheet.createRow(0).createCell(0);
    XSSFRichTextString rich = new XSSFRichTextString("What to <carry> & why");
    rich.applyFont(0, 4, (Font) bold);
    top.setCellValue(rich);
    String[] heads = {"Style", "Pieces", "Weight"};
    for (int c = 0; c < heads.length; c++) {
      XSSFCell cell = c == 0 ? sheet.createRow(2).createCell(0) : sheet.getRow(2).createCell(c);
      cell.setCellValue(heads[c]);
      cell.setCellStyle(head);
    }
    String[] texts = {"=1+1", "  two blanks  ", "line one\nline two"};
    for (int r = 0; r < texts.length; r++) {
      sheet.createRow(3 + r).createCell(0).setCellValue(texts[r]);
      sheet.getRow(3 + r).createCell(1).setCellValue(10 * number + r);
      sheet.getRow(3 + r).createCell(2).setCellValue(1.25 * r);
      sheet.getRow(3 + r).getCell(2).setCellStyle(weight);
    }
    XSSFCell date = sheet.getRow(3).createCell(5);
    date.setCellValue(java.time.LocalDate.of(2026, 3, 8));
    date.setCellStyle(day);
    XSSFCell sum = sheet.getRow(0).createCell(1);
    sum.setCellFormula("SUM(B4:B6)");
    sum.setCellValue(30 * number + 3);
    XSSFTable table = sheet.createTable(new AreaReference("A3:C6", book.getSpreadsheetVersion()));
    table.setName("Own_" + number);
    table.setDisplayName("Own_" + number);
    table.getCTTable().addNewTableStyleInfo().setName("TableStyleMedium2");
    sheet.createFreezePane(0, 3);
    sheet.setColumnWidth(0, 30 * 256);
    sheet.setRepeatingRows(new CellRangeAddress(2, 2, 0, 0));
    ConditionalFormattingRule rule =
        sheet.getSheetConditionalFormatting().createConditionalFormattingRule("B4>11");
    rule.createPatternFormatting().setFillBackgroundColor(IndexedColors.ROSE.getIndex());
    sheet
        .getSheetConditionalFormatting()
        .addConditionalFormatting(
            new CellRangeAddress[] {CellRangeAddress.valueOf("B4:B6")},
            new ConditionalFormattingRule[] {rule});
    XSSFDrawing drawing = sheet.createDrawingPatriarch();
    ClientAnchor at = drawing.createAnchor(0, 0, 0, 0, 3, 0, 5, 2);
    drawing.createCellComment(at).setString(new XSSFRichTextString("a note"));
    chart(sheet, drawing);
    sheet.createRow(9).createCell(0).setCellValue("to the stock");
    var link =
        book.getCreationHelper()
            .createHyperlink(org.apache.poi.common.usermodel.HyperlinkType.DOCUMENT);
    link.setAddress("'Stock'!A1");
    sheet.getRow(9).getCell(0).setHyperlink(link);
  }

  private static void textsInTheirCells(Sheet sheet) {
    for (Row row : sheet) {
      for (Cell cell : row) {
        if (cell.getCellType() == CellType.STRING) {
          CTCell raw = ((XSSFCell) cell).getCTCell();
          raw.setIs((CTRst) ((XSSFCell) cell).getRichStringCellValue().getCTRst().copy());
          raw.unsetV();
          raw.setT(STCellType.INLINE_STR);
        }
      }
    }
  }

  private static void chart(XSSFSheet sheet, XSSFDrawing drawing) {
    XSSFChart chart = drawing.createChart(drawing.createAnchor(0, 0, 0, 0, 6, 1, 12, 14));
    var bottom = chart.createCategoryAxis(AxisPosition.BOTTOM);
    var left = chart.createValueAxis(AxisPosition.LEFT);
    left.setCrosses(AxisCrosses.AUTO_ZERO);
    XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, bottom, left);
    data.setBarDirection(BarDirection.COL);
    data.addSeries(
        XDDFDataSourcesFactory.fromStringCellRange(sheet, CellRangeAddress.valueOf("A4:A6")),
        XDDFDataSourcesFactory.fromNumericCellRange(sheet, CellRangeAddress.valueOf("B4:B6")));
    chart.plot(data);
  }
}
