package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.season.Season;
import sparewell.units.MassUnit;
import sparewell.workbook.Books;

/** Counts, weights, chances, money and hours as anglers type them. */
class AmountsReadTest {
  static Reading stock(String count) {
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
    Reading reading = Reading.with("Stock", "Style|Box|Count\nWorm|Tray A|" + count);
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
        Reading.with("Styles", "Style|Family|Counted in\nCrank|Hard\nWorm|Soft|packs");
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
    Season season = Reading.with("Trips", "Trip|Date|Hours\nT1|2026-03-01|" + cell).season();
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
  void aStyleWithABadPriceKeepsItsStock() {
    Reading reading = Reading.of(style("Pack price", "dear"));
    assertEquals(List.of("error Styles C2 NOT_A_NUMBER"), reading.lines());
    assertEquals(1, reading.season().stock().size());
  }
}
