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
import sparewell.season.Season;
import sparewell.workbook.Books;

/** Dates, sizes, choices, yes and no. */
class WordsReadTest {
  @Test
  void aDateAmongSizesIsTheFractionTyped() {
    Reading reading =
        Reading.with("Stock", "Style|Size|Colour|Box|Count\nCrank|2026-03-08|Red|Tray A|3");
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
    Season season = Reading.with("Trips", "Trip|Date|Hours\nT1|" + cell + "|8").season();
    assertEquals(date, season.trips().get(0).date());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"'2026-02-30", "'05/03/2026", "yesterday", "TRUE", "12", "'1026-05-03", "7"})
  void otherDatesAreRefused(String cell) {
    Reading reading = Reading.with("Trips", "Trip|Date|Hours\nT1|2026-03-01|8\nT2|" + cell + "|8");
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
        Reading.with(
            "Boxes", "Box|Compartment|Stays put\nTray A|Bow|" + (cell == null ? "" : cell));
    assertEquals(List.of(), reading.lines());
    assertEquals(yes, reading.season().boxes().get(0).staysPut());
  }

  /** Taken for a place aboard, a shelf at home would be planned as a place to stow boxes in. */
  @Test
  void aCompartmentThatMayBeAshoreIsLeftOut() {
    Reading reading =
        Reading.with(
            "Compartments",
            "Compartment|From transom|Ashore\nBow|160|\nStern|20|no\nShelf|0|yes\nShed|0|of course");
    assertEquals("error Compartments C5 NOT_YES_NO", reading.lines().get(0));
    assertEquals(3, reading.season().compartments().size());
  }

  @Test
  void aBadYesOrNoIsNo() {
    Reading reading = Reading.with("Boxes", "Box|Compartment|Stays put\nTray A|Bow|maybe");
    assertEquals(List.of("error Boxes C2 NOT_YES_NO"), reading.lines());
    assertEquals("value left out, as if blank (no)", reading.findings().get(0).done());
    assertTrue(!reading.season().boxes().get(0).staysPut());
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
        Reading.with("Loads", "Load|Weight|From transom|Kind\nMe|180|60|persn\nCooler|20|50");
    assertEquals(List.of("error Loads D2 NOT_A_CHOICE"), reading.lines());
    assertTrue(reading.findings().get(0).message().endsWith("did you mean 'person'?"));
    assertEquals("value left out, as if blank (gear)", reading.findings().get(0).done());
  }

  @Test
  void anUnknownCauseIsAnother() {
    Reading reading = Reading.with("Losses", "Trip|Style|Lost|Cause\nT1|Worm|1|tree");
    assertEquals("other", reading.season().losses().get(0).cause().word());
    assertEquals("read as other", reading.only(Code.CAUSE_AS_OTHER).done());
  }
}
