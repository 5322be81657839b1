package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.workbook.Books;
import sparewell.workbook.InputSheets;
import sparewell.workbook.ReadOptions;

class HeaderTest {
  private static final ReadOptions OPTIONS = ReadOptions.on(LocalDate.of(2026, 7, 15));

  @Test
  void titleRowsAboveOtherColumnsAndBlankRowsDoNoHarm() {
    Reading reading =
        Reading.with(
            "Losses",
            "What I lost\n\nTrip|see Trips\n\n"
                + "My mark|LOST|trip|Style |colour|SIZE|Why so\n\n"
                + "a|2|T1|Crank|red|3/8|wind\n\n\nb|1|T1|Worm|green\n");
    assertEquals(List.of(), reading.lines());
    assertEquals(2, reading.season().losses().size());
    assertEquals("Red", reading.season().losses().get(0).item().colour());
    assertEquals(7, reading.season().losses().get(0).origin().row());
  }

  @Test
  void aHeaderInRow20CountsAndOneInRow21DoesNot() throws UnusableInput {
    String grid = "Trip|Style|Lost\nT1|Crank|1";
    Books at20 = Books.season().with("Losses", "\n".repeat(19) + grid);
    assertEquals(1, Reading.of(at20).season().losses().size());
    Books at21 = Books.season().with("Losses", "\n".repeat(20) + grid);
    UnusableInput refused = assertThrows(UnusableInput.class, () -> Reading.result(at21, OPTIONS));
    assertEquals(1, refused.faults().size());
  }

  @Test
  void sheetNamesAndHeadersIgnoreCaseBlanksAndPunctuation() {
    Reading reading =
        Reading.of(
            Books.season()
                .without("Style hours")
                .without("Stock")
                .with("  STOCK-", "style|  Colour:|box.|count!|size\nCrank|Red|Tray A|4|'3/8")
                .with("style_HOURS", "Trip,|STYLE*|Hours:\nT1|crank|3"));
    assertEquals(List.of(), reading.lines());
    assertEquals(4, reading.season().stock().get(0).countedPieces());
    assertEquals(1, reading.season().styleHours().size());
  }

  @Test
  void colorAndQtyAreAccepted() {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Stock", "Style|Color|Box|Qty\nCrank|Red|Tray A|4")
                .with("Losses", "Trip|Style|Color|Lost\nT1|Crank|Red|1")
                .with("Boxes", "Box|Compartment|Tape color\nTray A|Bow|blue")
                .with("Restocks", "Date|Style|Color|Box|Qty\n2026-02-01|Crank|Red|Tray A|4"));
    assertEquals(List.of(), reading.lines());
    assertEquals("Red", reading.season().stock().get(0).item().colour());
    assertEquals("blue", reading.season().boxes().get(0).tapeColour());
    assertEquals(4, reading.season().restocks().get(0).addedPieces());
  }

  @Test
  void theFirstOfTwoEqualHeadersCounts() {
    Reading reading =
        Reading.with("Stock", "Style|Colour|Box|Count|COLOR\nCrank|Red|Tray A|4|Blue");
    assertEquals("warning Stock E1 HEADER_TWICE", reading.lines().get(0));
    assertEquals("Red", reading.season().stock().get(0).item().colour());
  }

  @Test
  void allMissingSheetsAndColumnsAreListedTogether() {
    Books books =
        Books.season()
            .without("Boxes")
            .with("Trips", "Trip|Date|Long\nT1|2026-03-01|8")
            .with("Stock", "nothing here\nStyle|Cuont|Box\nCrank|3|Tray A")
            .without("Styles")
            .with("Stiles", "Style|Family\nCrank|Hard")
            .without("Losses")
            .with("My losses", "Trip|Style|Lost");
    UnusableInput refused = assertThrows(UnusableInput.class, () -> Reading.result(books, OPTIONS));
    assertEquals(
        List.of(
            "The sheet 'Styles' is missing. Is 'Stiles' meant? Then rename it.",
            "The sheet 'Stock' has no header row within its first 20 rows: row 2 lacks Count (is"
                + " 'Cuont' meant?). Put all required columns into one row.",
            "The sheet 'Boxes' is missing. Add it, or copy it from a new workbook.",
            "The sheet 'Trips' has no header row within its first 20 rows: row 1 lacks Hours. Put"
                + " all required columns into one row.",
            "The sheet 'Losses' is missing. Is 'My losses' meant? Then rename it."),
        refused.faults());
  }

  @Test
  void everyRequiredSheetIsMissedAndNoOptionalOne() {
    Books oneThere = Books.empty().with("Losses", "Trip|Style|Lost");
    UnusableInput refused =
        assertThrows(UnusableInput.class, () -> Reading.result(oneThere, OPTIONS));
    long required = InputSheets.ALL.stream().filter(sheet -> sheet.required()).count();
    assertEquals(6, required);
    assertEquals(required - 1, refused.faults().size());
  }

  @Test
  void aWorkbookWithNoneOfThemIsToldOnce() {
    Books diary = Books.empty().with("Diary", "nothing");
    UnusableInput refused = assertThrows(UnusableInput.class, () -> Reading.result(diary, OPTIONS));
    assertEquals(1, refused.faults().size());
    assertTrue(refused.faults().get(0).contains("sparewell new"), refused.getMessage());
  }

  @Test
  void aRequiredSheetWithoutRowsIsFine() {
    Reading reading = Reading.with("Losses", "Trip|Style|Lost");
    assertEquals(List.of("note Losses  NO_ROWS"), reading.lines());
  }

  @Test
  void anOptionalSheetWithoutHeaderIsIgnoredWithAWarning() {
    Reading reading = Reading.with("Events", "Event|When\nCup|2026-09-01");
    assertEquals(List.of("warning Events  SHEET_WITHOUT_HEADER"), reading.lines());
    assertTrue(reading.only(Code.SHEET_WITHOUT_HEADER).message().contains("Event, Date, Hours"));
  }

  @Test
  void hiddenSheetsAndRowsAreRead() {
    Reading reading =
        Reading.of(
            Books.season()
                .touch(
                    workbook -> {
                      workbook.setSheetVisibility(
                          workbook.getSheetIndex("Stock"), SheetVisibility.VERY_HIDDEN);
                      workbook.setSheetHidden(workbook.getSheetIndex("Losses"), true);
                      workbook.getSheet("Stock").getRow(1).setZeroHeight(true);
                    }));
    assertEquals(3, reading.season().stock().size());
    assertEquals(1, reading.season().losses().size());
  }

  @Test
  void otherSheetsAreLeftAlone() {
    Reading reading =
        Reading.of(
            Books.season().with("Diary", "Style|Count\nx|y").with("Loss rates", "my own sheet"));
    assertEquals(List.of(), reading.lines());
  }

  @Test
  void aSheetNamedNearlyLikeAnInputSheetIsRemarked() {
    Reading reading = Reading.with("Evnets", "Event|Date|Hours");
    assertEquals(List.of("warning Evnets  SHEET_NAME_NEAR"), reading.lines());
  }

  @Test
  void theFirstOfTwoSheetsOfOneNameCounts() {
    Reading reading = Reading.with("Stock.", "Style|Box|Count\nCrank|Bow|3");
    assertEquals(List.of("warning Stock.  SHEET_TWICE"), reading.lines());
    assertEquals(3, reading.season().stock().size());
  }

  @Test
  void exampleRowsAreNotRead() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Stock", "Example: Crank|'3/8|Red|Nowhere|many")
                .plus("Settings", "example: Budget|a lot"));
    assertEquals(List.of(), reading.lines());
    assertEquals(3, reading.season().stock().size());
  }

  @Test
  void linesBrokenInsideAHeaderAreJoined() {
    Reading reading =
        Reading.of(
            Books.season()
                .touch(
                    workbook ->
                        workbook
                            .getSheet("Styles")
                            .getRow(0)
                            .getCell(2)
                            .setCellValue("Weight\neach\n(g)")));
    assertEquals(500, reading.season().styles().get(0).weightEach().orElseThrow().milligrams());
  }
}
