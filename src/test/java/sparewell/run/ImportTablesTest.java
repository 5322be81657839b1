package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import sparewell.ooxml.Zips;
import sparewell.save.Programs;
import sparewell.workbook.Books;
import sparewell.workbook.InputSheets;

/** Tables, filters, rules and formats of the sheet grow with new rows. */
class ImportTablesTest extends ImportFixture {
  static void table(XSSFWorkbook workbook, String area) {
    XSSFSheet sheet = workbook.getSheet("Losses");
    XSSFTable table = sheet.createTable(new AreaReference(area, SpreadsheetVersion.EXCEL2007));
    table.setName("LossRows");
    table.setDisplayName("LossRows");
    table.getCTTable().addNewAutoFilter().setRef(area);
  }

  @Test
  void tablesListsAndFormatsGoOn() throws Exception {
    remake(
        Books.season()
            .touch(
                workbook -> {
                  table(workbook, "A1:G2");
                  XSSFSheet sheet = workbook.getSheet("Losses");
                  var bold = workbook.createCellStyle();
                  bold.setDataFormat(workbook.createDataFormat().getFormat("0.000"));
                  sheet.getRow(1).getCell(4).setCellStyle(bold);
                  var helper = sheet.getDataValidationHelper();
                  var list = helper.createExplicitListConstraint(new String[] {"snag", "fish"});
                  sheet.addValidationData(
                      helper.createValidation(list, new CellRangeAddressList(1, 1, 5, 5)));
                  sheet.addValidationData(
                      helper.createValidation(list, new CellRangeAddressList(1, 99, 6, 6)));
                  var rules = sheet.getSheetConditionalFormatting();
                  rules.addConditionalFormatting(
                      new CellRangeAddress[] {CellRangeAddress.valueOf("E2:E2")},
                      rules.createConditionalFormattingRule("E2>3"));
                }));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\nT1,Worm,,Green,2,fish\n"));
    look(
        workbook -> {
          XSSFSheet sheet = workbook.getSheet("Losses");
          assertEquals("A1:G4", sheet.getTables().get(0).getCTTable().getRef());
          assertEquals("A1:G4", sheet.getTables().get(0).getCTTable().getAutoFilter().getRef());
          assertEquals("0.000", sheet.getRow(3).getCell(4).getCellStyle().getDataFormatString());
          assertEquals(
              List.of("F2:F4", "G2:G100"),
              sheet.getDataValidations().stream()
                  .map(v -> v.getRegions().getCellRangeAddress(0).formatAsString())
                  .toList());
          assertEquals(
              "E2:E4",
              sheet
                  .getSheetConditionalFormatting()
                  .getConditionalFormattingAt(0)
                  .getFormattingRanges()[0]
                  .formatAsString());
        });
  }

  @Test
  void aPlainFilterGoesOn() throws Exception {
    remake(
        Books.season()
            .touch(w -> w.getSheet("Losses").setAutoFilter(CellRangeAddress.valueOf("A1:G2"))));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\nT1,Worm,,Green,2,fish\n"));
    look(
        workbook -> {
          XSSFSheet sheet = workbook.getSheet("Losses");
          assertEquals("A1:G4", sheet.getCTWorksheet().getAutoFilter().getRef());
          assertEquals(
              "Losses!$A$1:$G$4", workbook.getName("_xlnm._FilterDatabase").getRefersToFormula());
        });
  }

  /** XML that other programs may write (ECMA-376 part 1, 18.3.1): all of it is optional there. */
  @Test
  void prefixesAndPlacesLeftOutDoNoHarm() throws Exception {
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    String sheet = "xl/worksheets/sheet8.xml";
    String text =
        Zips.text(parts, sheet)
            .replaceAll("<dimension [^>]*/>", "")
            .replaceAll("<row r=\"\\d+\"", "<row")
            .replaceAll("<c r=\"[A-Z]+\\d+\"", "<c")
            .replace(
                "</sheetData>",
                "<row r=\"10\"><c r=\"I10\"><f t=\"shared\" ref=\"I10:I11\" si=\"0\">E10*2</f>"
                    + "<v>0</v></c></row><row><c r=\"I11\"><f t=\"shared\" si=\"0\"/><v>0</v></c>"
                    + "</row></sheetData>")
            .replaceAll("<(/?)([A-Za-z])", "<$1x:$2")
            .replace("xmlns=", "xmlns:x=");
    parts.put(sheet, Zips.utf8(text));
    Files.write(book, Zips.write(parts));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\nT1,Worm,,Green,3,fish\n"));
    look(
        workbook -> {
          XSSFSheet losses = workbook.getSheet("Losses");
          assertEquals("Crank", losses.getRow(1).getCell(1).getStringCellValue());
          assertEquals(3, losses.getRow(3).getCell(4).getNumericCellValue());
          assertEquals("E11*2", losses.getRow(10).getCell(8).getCellFormula());
        });
    assertEquals(3, season().losses().size());
  }

  @Test
  void blankRowsOfATableAreFilled() throws Exception {
    remake(Books.season().touch(workbook -> table(workbook, "A1:G9")));
    ok(take(InputSheets.LOSSES, GREEN_WORM));
    look(
        workbook -> {
          XSSFSheet sheet = workbook.getSheet("Losses");
          assertEquals("A1:G9", sheet.getTables().get(0).getCTTable().getRef());
          assertEquals("Worm", sheet.getRow(2).getCell(1).getStringCellValue());
        });
  }

  @Test
  void datesAreRealDatesWhereTheColumnShowsDates() throws Exception {
    remake(
        Books.season()
            .touch(workbook -> workbook.getCTWorkbook().getWorkbookPr().setDate1904(true))
            .with("Trips", "Trip|Date|Hours\nT1|2026-03-01|8"));
    ok(take(InputSheets.TRIPS, "Trip,Date,Hours\nT2,2026-04-05,6\n"));
    look(
        workbook -> {
          var cell = workbook.getSheet("Trips").getRow(2).getCell(1);
          assertEquals("yyyy-mm-dd", cell.getCellStyle().getDataFormatString());
          // ECMA-376 part 1, section 18.17.4.1: day 0 is 1904-01-01
          assertEquals(
              java.time.temporal.ChronoUnit.DAYS.between(
                  LocalDate.of(1904, 1, 1), LocalDate.of(2026, 4, 5)),
              cell.getNumericCellValue());
        });
    assertEquals(
        LocalDate.of(2026, 4, 5),
        season().trips().stream()
            .filter(t -> t.id().equals("T2"))
            .findFirst()
            .orElseThrow()
            .date());
  }

  @Test
  void somethingBelowTheTableIsInTheWay() throws Exception {
    remake(Books.season().plus("Losses", "\nTotal||||2"));
    refused(take(InputSheets.LOSSES, GREEN_WORM), "Row 4", "Total", "Style");
    remake(
        Books.season()
            .touch(
                workbook ->
                    workbook
                        .getSheet("Losses")
                        .addMergedRegion(CellRangeAddress.valueOf("A3:C3"))));
    refused(take(InputSheets.LOSSES, GREEN_WORM), "merged cells (A3:C3)");
    remake(Books.season().touch(workbook -> workbook.getSheet("Losses").protectSheet("x")));
    refused(take(InputSheets.LOSSES, GREEN_WORM), "is protected");
    remake(
        Books.season()
            .with("Losses", "Trip|Style|Remark|Lost|Size|Colour|Cause\nT1|Crank|ok|2\n||footnote"));
    refused(take(InputSheets.LOSSES, GREEN_WORM), "something in C3");
  }

  @Test
  void openpyxlLoadsIt() throws Exception {
    assumeTrue(Programs.hasPythonModule("openpyxl"), "openpyxl is not installed");
    remake(Books.season().touch(workbook -> table(workbook, "A1:G2")));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,<Green & white>,1,fish\n"));
    String script =
        "import openpyxl,sys\nw=openpyxl.load_workbook(sys.argv[1])['Losses']\n"
            + "assert [c.value for c in w[3]][:6]==['T1','Worm',None,'<Green & white>',1,'fish'],"
            + "[c.value for c in w[3]]\nassert w.tables['LossRows'].ref=='A1:G3'\n";
    assertEquals(
        0,
        Programs.run(
            folder, 2, TimeUnit.MINUTES, List.of(Programs.PYTHON, "-c", script, book.toString())));
  }
}
