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
