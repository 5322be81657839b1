package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.finding.Code;
import sparewell.season.Box;
import sparewell.season.BoxMove;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Recount;
import sparewell.season.Transfer;
import sparewell.workbook.Books;

/** The ledgers that the angler, or a command, adds to: Transfers, Box log, Counts. */
class LedgersReadTest {
  private static final String TRANSFERS = "Date|Style|Size|Colour|Count|From box|To box";
  private static final String BOX_LOG = "Date|Box|Compartment|Checked";
  private static final String COUNTS = "Date|Style|Size|Colour|Box|Count";
  private static final Place TRAY = new Place("Tray A", "Bow");
  private static final Place SHELF = new Place("", "Shelf");

  private static Books with(String sheet, String header, String... rows) {
    return Books.season().with(sheet, header + "\n" + String.join("\n", rows));
  }

  @Test
  void whatWasCarriedIsReadInPiecesBetweenBoxesAndCompartments() {
    Reading reading =
        Reading.of(
            with(
                "Transfers",
                "Date|Style|Color|Qty|To|From|Size",
                "2026-03-02|crank|red|2|tray a|SHELF|3/8",
                "2026-06-30|Worm|Green|0.5|Shelf|Tray A|"));
    assertEquals(List.of(), reading.lines());
    List<Transfer> all = reading.season().transfers();
    assertEquals(LocalDate.of(2026, 3, 2), all.get(0).date());
    assertEquals(new ItemId("Crank", "3/8", "Red"), all.get(0).item());
    assertEquals(2, all.get(0).carriedPieces());
    assertEquals(SHELF, all.get(0).from());
    assertEquals(TRAY, all.get(0).to());
    assertEquals(5, all.get(1).carriedPieces(), "half a pack of ten");
  }

  @ParameterizedTest
  @CsvSource({
    "|Crank|'''3/8'|Red|2|Shelf|Tray A, error Transfers A2 REQUIRED_BLANK",
    "2026-03-02|Crank|'''3/8'|Red||Shelf|Tray A, error Transfers E2 REQUIRED_BLANK",
    "2026-03-02|Crank|'''3/8'|Red|1.5|Shelf|Tray A, error Transfers E2 NOT_WHOLE",
    "2026-03-02|Crank|'''3/8'|Red|2||Tray A, error Transfers F2 REQUIRED_BLANK",
    "2026-03-02|Crank|'''3/8'|Red|2|Attic|Tray A, error Transfers F2 UNKNOWN_KEY",
    "2026-03-02|Crank|'''3/8'|Red|2|Shelf|Tray Z, error Transfers G2 UNKNOWN_KEY",
    "2026-03-02|Spoon|'''3/8'|Red|2|Shelf|Tray A, error Transfers B2 UNKNOWN_KEY",
    "2026-03-02|Crank|'''3/8'|Red|2|Shelf|shelf, warning Transfers G2 TRANSFER_TO_ITSELF",
    "2026-07-01|Crank|'''3/8'|Red|2|Shelf|Tray A, note Transfers A2 AFTER_AS_OF"
  })
  void aTransferThatCannotBeUsedIsLeftOutAndTold(String row, String finding) {
    Reading reading = Reading.of(with("Transfers", TRANSFERS, row));
    assertEquals(List.of(finding), reading.lines());
    assertEquals(List.of(), reading.season().transfers());
  }

  @Test
  void aBoxStandsWhereItsLastRowSays() {
    Reading reading =
        Reading.of(
            with(
                    "Box log",
                    BOX_LOG,
                    "2026-05-01|Tray A|Shelf|",
                    "2026-04-01|tray a|stern|yes",
                    "2026-07-01|Tray A|Bow|yes",
                    "2026-06-01|Tray A||yes")
                .plus("Boxes", "Tray B|Stern|1"));
    assertEquals(List.of("note Box log A4 AFTER_AS_OF"), reading.lines());
    Box tray = reading.season().boxes().get(0);
    assertEquals("Shelf", tray.compartment());
    assertEquals(Optional.of(LocalDate.of(2026, 6, 1)), tray.lastChecked());
    assertEquals("Stern", reading.season().boxes().get(1).compartment());
    assertEquals(
        List.of("Bow Stern", "Stern Shelf"),
        reading.season().boxMoves().stream().map(LedgersReadTest::way).toList());
    assertEquals(
        new Place("Tray A", "Shelf"),
        reading.season().stock().get(0).place(),
        "what lies in it went with it");
  }

  private static String way(BoxMove move) {
    return move.from() + " " + move.to();
  }

  @Test
  void ofTwoRowsOfOneDayTheLowerOneCounts() {
    Reading reading =
        Reading.of(
            with("Box log", BOX_LOG, "2026-05-01|Tray A|Shelf|", "2026-05-01|Tray A|Stern|"));
    assertEquals("Stern", reading.season().boxes().get(0).compartment());
  }

  @ParameterizedTest
  @CsvSource({"2026-05-01, 2026-05-01", "2025-12-31, 2026-01-05", "'', 2026-01-05"})
  void theLatestCheckCounts(String logged, String last) {
    String row = logged.isEmpty() ? "2026-06-01|Tray A|Bow|no" : logged + "|Tray A||x";
    Reading reading =
        Reading.of(
            with("Box log", BOX_LOG, row)
                .with("Boxes", "Box|Compartment|Last checked\nTray A|Bow|2026-01-05"));
    assertEquals(Optional.of(LocalDate.parse(last)), reading.season().boxes().get(0).lastChecked());
  }

  @ParameterizedTest
  @CsvSource({
    "|Tray A|Bow|, error Box log A2 REQUIRED_BLANK",
    "2026-05-01||Bow|, error Box log B2 REQUIRED_BLANK",
    "2026-05-01|Shelf|Bow|, error Box log B2 UNKNOWN_KEY",
    "2026-05-01|Tray A|Attic|yes, error Box log C2 UNKNOWN_KEY",
    "2026-05-01|Tray A|Shelf|maybe, error Box log D2 NOT_YES_NO",
    "2026-05-01|Tray A||, warning Box log C2 BOX_LOG_SAYS_NOTHING",
    "2026-05-01|Tray A||no, warning Box log C2 BOX_LOG_SAYS_NOTHING"
  })
  void aBoxLogRowThatCannotBeUsedIsLeftOutAndTold(String row, String finding) {
    Reading reading = Reading.of(with("Box log", BOX_LOG, row));
    assertEquals(List.of(finding), reading.lines());
    assertEquals("Bow", reading.season().boxes().get(0).compartment());
    assertEquals(Optional.empty(), reading.season().boxes().get(0).lastChecked());
  }

  @Test
  void countsAreReadInPieces() {
    Reading reading =
        Reading.of(
            with(
                "Counts",
                COUNTS,
                "2026-05-01|Worm||Green|tray a|1.5",
                "2026-05-01|Crank|'3/8|Red|Shelf|0",
                "2026-07-01|Crank|'3/8|Red|Shelf|9",
                "2026-05-01|Crank|'3/8|Red|Shelf|"));
    assertEquals(
        List.of("note Counts A4 AFTER_AS_OF", "error Counts F5 REQUIRED_BLANK"), reading.lines());
    List<Recount> counts = reading.season().recounts();
    assertEquals(2, counts.size());
    assertEquals(15, counts.get(0).countedPieces());
    assertEquals(TRAY, counts.get(0).place());
    assertEquals(0, counts.get(1).countedPieces());
    assertEquals(SHELF, counts.get(1).place());
  }

  @Test
  void aBlankCountedOnTakesTheSetting() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Settings", "Stock counted on|2026-02-02")
                .plus("Stock", "Worm||Pink|Tray A|1|"));
    assertEquals(List.of(), reading.lines());
    assertEquals(
        List.of("2026-01-01", "2026-01-01", "2026-01-01", "2026-02-02"),
        reading.season().stock().stream()
            .map(row -> row.countedOn().map(LocalDate::toString).orElse("-"))
            .toList());
    assertTrue(
        Reading.plus("Stock", "Worm||Pink|Tray A|1|")
            .season()
            .stock()
            .get(3)
            .countedOn()
            .isEmpty());
  }

  @Test
  void aSettingCountedInTheFutureIsAWarning() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Settings", "Stock counted on|2026-07-02")
                .plus("Stock", "Worm||Pink|Tray A|1|\nWorm||Blue|Tray A|1|"));
    assertEquals("Settings", reading.only(Code.COUNTED_IN_FUTURE).at().sheet());
  }

  @Test
  void ledgersWithoutRowsAreNoNews() {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Transfers", TRANSFERS)
                .with("Box log", BOX_LOG)
                .with("Counts", COUNTS));
    assertEquals(List.of(), reading.lines());
  }
}
