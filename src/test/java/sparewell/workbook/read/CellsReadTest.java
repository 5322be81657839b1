package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.units.MassUnit;
import sparewell.workbook.Books;

class CellsReadTest {
  private static Reading stock(String count) {
    return Reading.of(
        Books.season()
            .with("Stock", "Style|Box|Count\nCrank|Tray A|" + count)
            .with("Losses", "Trip|Style|Lost"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {"5|5", "'5|5", "' 5 |5", "'5 pcs|5", "=2+3|5", "0|0", "'1,200|1200"})
  void countsInPieces(String cell, int pieces) {
    assertEquals(pieces, stock(cell).season().stock().get(0).countedPieces());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "|REQUIRED_BLANK",
        "TRUE|BOOLEAN_AS_NUMBER",
        "-1|NEGATIVE",
        "2.5|NOT_WHOLE",
        "abc|NOT_A_NUMBER",
        "2026-03-08|DATE_AS_NUMBER",
        "1e9|TOO_LARGE",
        "2 packs|NOT_A_NUMBER",
        "12?|NOT_A_NUMBER"
      })
  void aBadCountCostsItsRowAndIsSaid(String cell, Code code) {
    Reading reading = stock((cell == null ? "" : cell) + "\nCrank|Bow|3");
    assertEquals(1, reading.season().stock().size());
    Finding finding = reading.only(code);
    assertEquals("C2", finding.at().reference());
    assertEquals("Stock", finding.at().sheet());
    assertEquals("error", finding.severity().word());
    assertEquals("row left out", finding.done());
  }

  @ParameterizedTest
  @CsvSource({"2.5, 25", "0.3, 3", "1, 10", "'''1.5 packs', 15"})
  void packsMayBeParted(String count, int pieces) {
    Reading reading =
        Reading.of(Books.season().with("Stock", "Style|Box|Count\nWorm|Tray A|" + count));
    assertEquals(List.of(), reading.lines());
    assertEquals(pieces, reading.season().stock().get(0).countedPieces());
  }

  @Test
  void aPartOfAPieceIsNotCounted() {
    Reading reading =
        Reading.of(
            Books.season()
                .with(
                    "Styles",
                    "Style|Family|Counted in|Pieces per pack|Carry at least\n"
                        + "Crank|Hard\nWorm|Soft|Packs|7|0.5")
                .with("Stock", "Style|Box|Count\nWorm|Tray A|2.5"));
    assertEquals(17, reading.season().stock().get(0).countedPieces());
    assertEquals("read as 17 pieces", reading.findings().get(1).done());
    assertEquals(4, reading.season().styles().get(1).carryAtLeast().getAsInt());
  }

  @Test
  void packsWithoutAPackSizeAreRemarked() {
    Reading reading =
        Reading.of(
            Books.season().with("Styles", "Style|Family|Counted in\nCrank|Hard\nWorm|Soft|packs"));
    assertEquals(1, reading.season().styles().get(1).piecesPerPack());
    reading.only(Code.BLANK_PACK_SIZE);
  }

  @Test
  void allFaultsOfARowAreSaid() {
    Reading reading =
        Reading.of(
            Books.season()
                .with(
                    "Stock",
                    "Style|Box|Count|Counted on|Weight each|Pack price\n"
                        + "Crnak|Trey A|many|yesterday|heavy|dear\nCrank|Tray A|1")
                .with("Losses", "Trip|Style|Lost\nT1|Crank|1"));
    assertEquals(
        List.of(
            "error Stock A2 UNKNOWN_KEY",
            "error Stock B2 UNKNOWN_KEY",
            "error Stock C2 NOT_A_NUMBER",
            "error Stock D2 NOT_A_DATE",
            "error Stock E2 NOT_A_NUMBER",
            "error Stock F2 NOT_A_NUMBER"),
        reading.lines());
    assertEquals(1, reading.season().stock().size());
  }

  // A typed 3/8 becomes 8 March of the year of typing; common practice of spreadsheet programs
  @ParameterizedTest
  @CsvSource({
    "2026-03-08, 0.375, 3/8 oz",
    "2019-01-02, 0.5, 1/2 oz",
    "2026-05-16, 0.3125, 5/16 oz",
    "1932-01-01, 0.03125, 1/32 oz",
    "1964-01-01, 0.015625, 1/64 oz"
  })
  void aDateAmongWeightsIsTheFractionTyped(String cell, double ounces, String readAs) {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Styles", "Style|Family|Weight each\nCrank|Hard|" + cell)
                .with("Stock", "Style|Box|Count\nCrank|Tray A|3")
                .without("Style hours"));
    assertEquals(
        ounces,
        reading.season().styles().get(0).weightEach().orElseThrow().in(MassUnit.OUNCE),
        2e-5);
    Finding finding = reading.only(Code.DATE_AS_FRACTION);
    assertEquals("C2", finding.at().reference());
    assertEquals("warning", finding.severity().word());
    assertEquals("read as " + readAs, finding.done());
  }

  @Test
  void aDateAmongSizesIsTheFractionTyped() {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Stock", "Style|Size|Colour|Box|Count\nCrank|2026-03-08|Red|Tray A|3"));
    assertEquals("3/8", reading.season().stock().get(0).item().size());
    assertEquals("3/8", reading.season().losses().get(0).item().size());
    assertEquals(List.of("warning Stock B2 DATE_AS_FRACTION"), reading.lines());
  }

  @Test
  void aSizeShownAsAFractionIsThatFraction() {
    Reading reading =
        Reading.of(
            Books.season()
                .with(
                    "Stock",
                    "Style|Size|Colour|Box|Count\nCrank|0.375|Red|Tray A|3\nCrank|5|Red|Bow|1")
                .touch(
                    workbook -> {
                      CellStyle style = workbook.createCellStyle();
                      style.setDataFormat((short) 12);
                      workbook.getSheet("Stock").getRow(1).getCell(1).setCellStyle(style);
                    }));
    assertEquals("3/8", reading.season().stock().get(0).item().size());
    assertEquals("5", reading.season().stock().get(1).item().size());
  }

  @ParameterizedTest
  @CsvSource({
    "2026-05-03, 2026-05-03",
    "'''2026-05-03', 2026-05-03",
    "'''2026-5-3', 2026-05-03",
    "'''2026/05/03', 2026-05-03",
    "'''2026-05-03 06:30', 2026-05-03",
    "46145.25, 2026-05-03",
    "'''3 May 2026', 2026-05-03",
    "'''may 3, 2026', 2026-05-03"
  })
  void datesAreReadAsDatesOrText(String cell, LocalDate date) {
    Season season =
        Reading.of(Books.season().with("Trips", "Trip|Date|Hours\nT1|" + cell + "|8")).season();
    assertEquals(date, season.trips().get(0).date());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"'2026-02-30", "'05/03/2026", "yesterday", "TRUE", "12", "'1026-05-03", "7"})
  void otherDatesAreRefused(String cell) {
    Reading reading =
        Reading.of(
            Books.season().with("Trips", "Trip|Date|Hours\nT1|2026-03-01|8\nT2|" + cell + "|8"));
    assertEquals(1, reading.season().trips().size());
    assertEquals("B3", reading.only(Code.NOT_A_DATE).at().reference());
  }

  @Test
  void datesCountFrom1904WhereTheWorkbookSaysSo() {
    // openpyxl 3.0.9: from_excel(43538, MAC_EPOCH) is 2023-03-15
    Reading reading =
        Reading.of(
            Books.season()
                .touch(
                    workbook -> {
                      workbook.getCTWorkbook().getWorkbookPr().setDate1904(true);
                      workbook.getSheet("Trips").getRow(1).getCell(1).setCellValue(43538.0);
                      workbook.getSheet("Settings").getRow(2).getCell(1).setCellValue(44683.5);
                    }));
    assertEquals(LocalDate.of(2023, 3, 15), reading.season().trips().get(0).date());
    assertEquals(LocalDate.of(2026, 5, 3), reading.season().settings().asOf());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "yes|true",
        "Y|true",
        "TRUE|true",
        "'true|true",
        "x|true",
        "X |true",
        "1|true",
        "no|false",
        "N|false",
        "FALSE|false",
        "'False|false",
        "|false",
        "0|false"
      })
  void yesAndNo(String cell, boolean yes) {
    Reading reading =
        Reading.of(
            Books.season()
                .with(
                    "Boxes",
                    "Box|Compartment|Stays put\nTray A|Bow|" + (cell == null ? "" : cell)));
    assertEquals(List.of(), reading.lines());
    assertEquals(yes, reading.season().boxes().get(0).staysPut());
  }

  @Test
  void aBadYesOrNoIsNo() {
    Reading reading =
        Reading.of(Books.season().with("Boxes", "Box|Compartment|Stays put\nTray A|Bow|maybe"));
    assertEquals(List.of("error Boxes C2 NOT_YES_NO"), reading.lines());
    assertEquals("value left out, as if blank (no)", reading.findings().get(0).done());
    assertTrue(!reading.season().boxes().get(0).staysPut());
  }

  @ParameterizedTest
  @CsvSource({"0.9, 0.9", "95, 0.95", "50, 0.5", "99.9, 0.999", "'''95%', 0.95", "'''0.8', 0.8"})
  void chances(String cell, double probability) {
    Reading reading = Reading.of(style("Chance wanted", cell));
    assertEquals(
        probability,
        reading.season().styles().get(0).chanceWantedProbability().orElseThrow(),
        1e-12);
    boolean warned = reading.findings().stream().anyMatch(f -> f.code() == Code.PERCENT_CHANCE);
    assertEquals(!cell.contains("%") && Double.parseDouble(cell.replace("'", "")) > 1, warned);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "1", "49", "99.95", "100", "-0.5"})
  void chancesOutsideAreRefused(String cell) {
    Reading reading = Reading.of(style("Chance wanted", cell));
    assertTrue(reading.season().styles().get(0).chanceWantedProbability().isEmpty());
    assertEquals("value left out, as if blank (the setting)", reading.only(Code.BAD_CHANCE).done());
  }

  private static Books style(String column, String cell) {
    return Books.season()
        .with("Styles", "Style|Family|" + column + "\nCrank|Hard|" + cell)
        .with("Stock", "Style|Size|Colour|Box|Count\nCrank|'3/8|Red|Tray A|3")
        .without("Style hours");
  }

  @ParameterizedTest
  @CsvSource({
    "'''$4.99', 4.99",
    "4.99, 4.99",
    "'''4.99 USD', 4.99",
    "'''\u20ac 5', 5.00",
    "5, 5.00"
  })
  void money(String cell, String amount) {
    assertEquals(
        amount,
        Reading.of(style("Pack price", cell))
            .season()
            .styles()
            .get(0)
            .packPrice()
            .orElseThrow()
            .toPlainString());
  }

  @Test
  void aDecimalCommaIsReadWithAWarning() {
    Reading reading = Reading.of(style("Pack price", "4,99"));
    assertEquals(
        "4.99", reading.season().styles().get(0).packPrice().orElseThrow().toPlainString());
    assertEquals("read as 4.99", reading.only(Code.COMMA_NUMBER).done());
  }

  @ParameterizedTest
  @CsvSource({
    "6.5, 6.5",
    "'''6.5 h', 6.5",
    "'''6:30', 6.5",
    "'''4 1/2', 4.5",
    "'''4 h 30 min', 4.5"
  })
  void hours(String cell, double hours) {
    Season season =
        Reading.of(Books.season().with("Trips", "Trip|Date|Hours\nT1|2026-03-01|" + cell)).season();
    assertEquals(hours, season.trips().get(0).fishedHours().orElseThrow(), 1e-12);
  }

  @Test
  void aTimeOfDayAmongHoursIsRead() {
    Reading reading =
        Reading.of(
            Books.season()
                .touch(
                    workbook -> {
                      CellStyle style = workbook.createCellStyle();
                      style.setDataFormat((short) 20); // h:mm
                      var cell = workbook.getSheet("Trips").getRow(1).getCell(2);
                      cell.setCellValue(0.2708333333);
                      cell.setCellStyle(style);
                    }));
    assertEquals(6.5, reading.season().trips().get(0).fishedHours().orElseThrow(), 1e-9);
    assertEquals("read as 6.5 hours", reading.only(Code.TIME_AS_HOURS).done());
  }

  @Test
  void formulasWithAStoredValueAreReadFromIt() {
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet(
                    "Stock",
                    xml ->
                        xml.replaceAll(
                            "<c r=\"E2\"[^>]*><v>[^<]*</v>", "<c r=\"E2\"><f>1/0</f><v>9</v>")));
    assertEquals(List.of(), reading.lines());
    assertEquals(9, reading.season().stock().get(0).countedPieces());
  }

  @Test
  void formulasWithoutAStoredValueAreComputed() {
    Reading reading = stock("=SUM(1,2)*2");
    assertEquals(6, reading.season().stock().get(0).countedPieces());
    assertEquals(
        List.of("warning Stock C2 FORMULA_COMPUTED", "note Losses  NO_ROWS"), reading.lines());
    assertEquals("computed: 6", reading.findings().get(0).done());
  }

  @Test
  void formulasMayReachIntoOtherSheets() {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Diary", "7")
                .with("Stock", "Style|Box|Count\n=\"Cr\"&\"ank\"|Tray A|=Diary!A1+1"));
    assertEquals("Crank", reading.season().stock().get(0).item().style());
    assertEquals(8, reading.season().stock().get(0).countedPieces());
  }

  @Test
  void formulasThatChangeByThemselvesAreBlank() {
    Reading reading = stock("=RANDBETWEEN(1,6)");
    assertEquals(
        List.of(
            "warning Stock C2 FORMULA_BLANK",
            "error Stock C2 REQUIRED_BLANK",
            "note Losses  NO_ROWS"),
        reading.lines());
  }

  @Test
  void formulasInACircleAreBlank() {
    assertEquals(
        List.of(
            "warning Stock C2 FORMULA_BLANK",
            "error Stock C2 REQUIRED_BLANK",
            "note Losses  NO_ROWS"),
        stock("=C2+1").lines());
  }

  @Test
  void aFormulaForAnErrorIsSaid() {
    assertEquals(
        "the cell in Count shows the error #DIV/0!; correct its formula",
        stock("=1/0").only(Code.ERROR_VALUE).message());
  }

  @ParameterizedTest
  @ValueSource(strings = {"#N/A", "#SPILL!", "#CALC!", "#REF!"})
  void errorValuesAreFindings(String error) {
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet(
                    "Stock",
                    xml ->
                        xml.replaceAll(
                            "<c r=\"E2\"[^>]*><v>[^<]*</v>",
                            "<c r=\"E2\" t=\"e\"><v>" + error + "</v>")));
    assertEquals(List.of("error Stock E2 ERROR_VALUE"), reading.lines());
    assertTrue(reading.findings().get(0).message().contains(error));
  }

  @Test
  void damagedCellsAreFindings() {
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet(
                    "Stock",
                    xml ->
                        xml.replaceAll(
                                "<c r=\"E2\"[^>]*><v>[^<]*</v>", "<c r=\"E2\" t=\"s\"><v>99999</v>")
                            .replaceAll("<c r=\"E3\"[^>]*><v>[^<]*</v>", "<c r=\"E3\"><v>1E999</v>")
                            .replaceAll(
                                "<c r=\"E4\"[^>]*><v>[^<]*</v>", "<c r=\"E4\"><v>four</v>")));
    assertEquals(
        List.of(
            "error Stock E2 DAMAGED_CELL",
            "error Stock E3 DAMAGED_CELL",
            "error Stock E4 DAMAGED_CELL"),
        reading.lines());
  }

  @Test
  void unusualCellsAreRead() {
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet(
                    "Stock",
                    xml ->
                        xml.replace(
                            "</sheetData>",
                            "<row><c t=\"inlineStr\"><is><r><t>Cra</t></r><rPh sb=\"0\" eb=\"1\"><t>xx"
                                + "</t></rPh><r><t>nk</t></r></is></c><c/>"
                                + "<c t=\"str\"><v>Blue_x0007_</v></c>"
                                + "<c t=\"inlineStr\"><is><t>Tray_x0020_A</t></is></c>"
                                + "<c><v>3</v></c>"
                                + "<c t=\"d\"><v>2026-02-03T00:00:00</v></c></row></sheetData>")));
    StockRow row = reading.season().stock().get(3);
    assertEquals("Crank", row.item().style());
    assertEquals("Blue", row.item().colour());
    assertEquals("Tray A", row.place().name());
    assertEquals(LocalDate.of(2026, 2, 3), row.countedOn().orElseThrow());
    assertEquals(5, row.origin().row());
    assertEquals(List.of("warning Stock C5 CONTROL_CHARACTERS"), reading.lines());
  }

  @Test
  void aNameThatBecameADateIsRemarked() {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Boxes", "Box|Compartment\nTray A|Bow\n2026-03-01|Bow")
                .plus("Stock", "Crank||Blue|2026-03-01|2"));
    assertEquals("2026-03-01", reading.season().stock().get(3).place().name());
    assertEquals("warning Boxes A3 DATE_AS_NAME", reading.lines().get(0));
  }

  @Test
  void aBadChoiceTakesTheStandard() {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Loads", "Load|Weight|From transom|Kind\nMe|180|60|persn\nCooler|20|50"));
    assertEquals(List.of("error Loads D2 NOT_A_CHOICE"), reading.lines());
    assertTrue(reading.findings().get(0).message().endsWith("did you mean 'person'?"));
    assertEquals("value left out, as if blank (gear)", reading.findings().get(0).done());
  }

  @Test
  void anUnknownCauseIsAnother() {
    Reading reading =
        Reading.of(Books.season().with("Losses", "Trip|Style|Lost|Cause\nT1|Worm|1|tree"));
    assertEquals("other", reading.season().losses().get(0).cause().word());
    assertEquals("read as other", reading.only(Code.CAUSE_AS_OTHER).done());
  }

  @Test
  void aStyleWithABadPriceKeepsItsStock() {
    Reading reading = Reading.of(style("Pack price", "dear"));
    assertEquals(List.of("error Styles C2 NOT_A_NUMBER"), reading.lines());
    assertEquals(1, reading.season().stock().size());
  }

  @Test
  void manyFormattedBlankCellsAreSkipped() {
    StringBuilder blank = new StringBuilder();
    for (int row = 10; row < 200_000; row++) {
      blank.append("<row r=\"").append(row).append("\"><c r=\"A").append(row);
      blank.append("\" s=\"0\"/><c r=\"B").append(row).append("\" s=\"0\"/></row>");
    }
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet("Stock", xml -> xml.replace("</sheetData>", blank + "</sheetData>")));
    assertEquals(List.of(), reading.lines());
    assertEquals(3, reading.season().stock().size());
  }
}
