package sparewell.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

/** Effects of restocks, transfers, box moves and counts on the stock, worked by hand. */
class StockLedgersTest {
  private Books books =
      Books.season()
          .plus("Boxes", "Tray B|Stern\nChest|Shelf")
          .with("Trips", "Trip|Date|Hours\nFeb|2026-02-10|8\nMar|2026-03-10|8")
          .with("Losses", "Trip|Style|Colour|Lost")
          .without("Style hours");

  private StockLedgersTest stock(String rows) {
    books.with("Stock", "Style|Colour|Box|Count|Counted on\n" + rows);
    return this;
  }

  private StockLedgersTest lost(String rows) {
    books.with("Losses", "Trip|Style|Colour|Lost\n" + rows);
    return this;
  }

  private StockLedgersTest restocked(String rows) {
    books.with("Restocks", "Date|Style|Colour|Box|Count\n" + rows);
    return this;
  }

  private StockLedgersTest carried(String rows) {
    books.with("Transfers", "Date|Style|Colour|Count|From box|To box\n" + rows);
    return this;
  }

  private StockLedgersTest moved(String rows) {
    books.with("Box log", "Date|Box|Compartment\n" + rows);
    return this;
  }

  private StockLedgersTest counted(String rows) {
    books.with("Counts", "Date|Style|Colour|Box|Count\n" + rows);
    return this;
  }

  private StockLedgersTest set(String rows) {
    books.plus("Settings", rows);
    return this;
  }

  /** Checks what lies where, and which findings there are. */
  private List<Finding> gives(String holdings, Code... findings) {
    OnHand onHand = OnHandCalculator.of(Reading.of(books).season());
    assertEquals(
        holdings,
        String.join(
            ", ",
            onHand.holdings().stream().map(h -> h.place().name() + " " + h.pieces()).toList()));
    assertEquals(
        List.of(findings), onHand.findings().stream().map(Finding::code).sorted().toList());
    return onHand.findings();
  }

  @Test
  void whatWasPutElsewhereBeforeTheCountIsInTheCount() {
    Finding note =
        stock("Crank|Red|Tray A|5|2026-05-01")
            .restocked("2026-04-01|Crank|Red|Tray B|4")
            .gives("Tray A 5", Code.PUT_BEFORE_COUNT)
            .get(0);
    assertEquals("Restocks", note.at().sheet());
    assertEquals(
        "Crank Red was put into 'Tray B' before its count of 2026-05-01, and has no Stock row there",
        note.message());
  }

  @Test
  void aPlaceWithoutStockRowIsToldOnce() {
    stock("Crank|Red|Tray A|5|2026-05-01")
        .restocked(
            "2026-04-01|Crank|Red|Tray B|4\n2026-04-02|Crank|Red|Tray B|4\n"
                + "2026-05-02|Crank|Red|Chest|1\n2026-05-03|Crank|Red|Chest|1")
        .gives("Chest 2, Tray A 5", Code.PUT_BEFORE_COUNT, Code.RESTOCK_WITHOUT_ROW);
  }

  @Test
  void alsoWhereCountedOnIsBlank() {
    Finding warning =
        stock("Crank|Red|Tray A|5|")
            .restocked("2026-04-01|Crank|Red|Tray B|4")
            .gives("Tray A 5", Code.COUNT_WITHOUT_DATE)
            .get(0);
    assertEquals(List.of(4), warning.details());
    assertEquals("Stock", warning.at().sheet());
  }

  @Test
  void oneWarningTellsAllThatBlankCountsLeaveOut() {
    Finding warning =
        stock("Crank|Red|Tray A|5|\nCrank|Blue|Tray A|5|\nCrank|Pink|Tray A|5|2026-01-01")
            .lost("Feb|Crank|Red|1\nMar|Crank|Red|2\nMar|Crank|Pink|3")
            .restocked("2026-02-02|Crank|Blue|Tray A|4\n2026-02-02|Crank|Blue|Tray B|10")
            .carried("2026-02-03|Crank|Red|20|Tray A|Tray B")
            .gives("Tray A 5, Tray A 5, Tray A 2", Code.COUNT_WITHOUT_DATE)
            .get(0);
    assertEquals(List.of(1 + 2 + 4 + 10 + 20), warning.details());
  }

  @Test
  void theSettingDatesThem() {
    set("Stock counted on|2026-02-20")
        .stock("Crank|Red|Tray A|5|\nCrank|Red|Tray B|9|2026-01-01")
        .lost("Feb|Crank|Red|4\nMar|Crank|Red|2")
        .restocked("2026-03-01|Crank|Red|Tray A|6")
        .gives("Tray A 9, Tray B 5");
  }

  @Test
  void aCountWithoutDateThatLeavesOutNothingIsNoNews() {
    stock("Crank|Red|Tray A|5|").gives("Tray A 5");
  }

  @Test
  void lossesComeOffAshoreOnlyWhenNothingIsLeftAboard() {
    stock("Crank|Red|Shelf|9|2026-01-01\nCrank|Red|Tray A|3|2026-01-01")
        .lost("Feb|Crank|Red|5")
        .gives("Shelf 7, Tray A 0");
  }

  @ParameterizedTest
  @CsvSource({"2026-02-20, 9", "'', 9"})
  void butNotWhereACountAboardIsLaterThanTheLoss(String counted, int shelf) {
    Code[] left = counted.isEmpty() ? new Code[] {Code.COUNT_WITHOUT_DATE} : new Code[0];
    stock("Crank|Red|Shelf|9|2026-01-01\nCrank|Red|Tray A|3|" + counted)
        .lost("Feb|Crank|Red|5")
        .gives("Shelf " + shelf + ", Tray A 3", left);
  }

  @Test
  void whatIsCarriedLeavesOneBoxAndIsInTheOther() {
    stock("Crank|Red|Shelf|9|2026-01-01\nCrank|Red|Tray A|3|2026-02-02")
        .carried(
            "2026-02-01|Crank|Red|2|Shelf|Tray A\n" // in the count of Tray A already
                + "2026-02-03|Crank|Red|4|Shelf|Tray A\n"
                + "2026-02-04|Crank|Red|1|Tray A|Tray B\n"
                + "2026-02-05|Crank|Red|1|Tray A|Bow")
        .gives("Bow 1, Shelf 3, Tray A 5, Tray B 1");
  }

  @Test
  void anEmptiedBoxThatWasNeverCountedIsNotListed() {
    stock("Crank|Red|Shelf|9|2026-01-01")
        .carried("2026-02-01|Crank|Red|2|Shelf|Tray A\n2026-02-03|Crank|Red|2|Tray A|Shelf")
        .gives("Shelf 9");
  }

  @Test
  void whoCarriesMoreThanWasThereIsAskedToRecount() {
    Finding warning =
        stock("Crank|Red|Tray A|3|2026-01-01")
            .carried("2026-02-01|Crank|Red|5|Tray A|Tray B")
            .gives("Tray A 0, Tray B 5", Code.CARRIED_TOO_MANY)
            .get(0);
    assertEquals(List.of("Crank Red", "Tray A", 2), warning.details());
  }

  @ParameterizedTest
  @ValueSource(strings = {"3|Tray A|Tray B,3|Tray B|Chest", "3|Tray B|Chest,3|Tray A|Tray B"})
  void theOrderOfOneDayMeansNothing(String ways) {
    String rows = "2026-02-10|Crank|Red|" + ways.replace(",", "\n2026-02-10|Crank|Red|");
    // carried first, then lost
    stock("Crank|Red|Tray A|4|2026-01-01\nCrank|Red|Chest|1|2026-01-01")
        .carried(rows)
        .lost("Feb|Crank|Red|2")
        .gives("Chest 3, Tray A 0");
  }

  @Test
  void twoLossesOfOneDayAreOneLoss() {
    stock("Crank|Red|Tray A|4|2026-01-01\nCrank|Red|Tray B|3|2026-01-01")
        .lost("Feb|Crank|Red|3\nFeb|Crank|Red|2")
        .gives("Tray A 0, Tray B 2");
  }

  @Test
  void aLossComesOffTheBoxThatWasAboardAtThatTime() {
    stock("Crank|Red|Tray A|4|2026-01-01\nCrank|Red|Chest|9|2026-01-01")
        .lost("Feb|Crank|Red|1\nMar|Crank|Red|1")
        .moved("2026-02-20|Tray A|Shelf\n2026-02-20|Chest|Stern")
        // in February Tray A was aboard, in March the chest
        .gives("Chest 8, Tray A 3");
  }

  @Test
  void aBoxMovedOnTheDayOfTheTripHadBeenMovedBefore() {
    stock("Crank|Red|Tray A|4|2026-01-01\nCrank|Red|Chest|9|2026-01-01")
        .lost("Feb|Crank|Red|1")
        .moved("2026-02-10|Chest|Stern")
        .gives("Chest 8, Tray A 4");
  }

  @Test
  void theStandingOfABoxMakesItsStockAboardOrAshore() {
    books.plus("Stock", "Worm||Green|Chest|1|2026-01-01");
    OnHand before = OnHandCalculator.of(Reading.of(books).season());
    OnHand after = OnHandCalculator.of(Reading.of(moved("2026-06-30|Chest|Bow").books).season());
    assertEquals(10, before.items().get(1).ashore());
    assertEquals(0, after.items().get(1).ashore());
    assertEquals(35, after.items().get(1).aboard());
  }

  @Test
  void theLatestCountOfABoxIsItsStock() {
    stock("Crank|Red|Tray A|4|2026-01-01\nCrank|Red|Tray B|3|2026-01-01")
        .lost("Feb|Crank|Red|2\nMar|Crank|Red|1")
        .restocked("2026-02-11|Crank|Red|Tray A|7\n2026-02-20|Crank|Red|Tray A|1")
        .counted("2026-02-20|Crank|Red|Tray A|8\n2026-01-20|Crank|Red|Tray A|2")
        // February came off Tray B, which then held most
        .gives("Tray A 7, Tray B 1");
  }

  @Test
  void aStockRowLaterThanACountWins() {
    stock("Crank|Red|Tray A|4|2026-03-01")
        .counted("2026-02-01|Crank|Red|Tray A|9")
        .lost("Mar|Crank|Red|1")
        .gives("Tray A 3");
  }

  @Test
  void aCountEndsWhatAStockRowWithoutDateLeavesOpen() {
    stock("Crank|Red|Tray A|4|")
        .counted("2026-02-20|Crank|Red|Tray A|9")
        .lost("Feb|Crank|Red|5\nMar|Crank|Red|1")
        .restocked("2026-03-01|Crank|Red|Tray B|2")
        .gives("Tray A 8, Tray B 2", Code.RESTOCK_WITHOUT_ROW);
  }

  @Test
  void whatWasNeverInStockIsKnownFromItsCountOn() {
    stock("Crank|Blue|Tray A|4|2026-01-01")
        .counted("2026-02-20|Crank|Red|Tray B|9")
        .lost("Feb|Crank|Red|5\nMar|Crank|Red|1")
        .gives("Tray A 4, Tray B 8");
  }

  @Test
  void aCountEndsWhatWasOwed() {
    stock("Crank|Red|Tray A|2|2026-01-01")
        .lost("Feb|Crank|Red|5")
        .counted("2026-02-20|Crank|Red|Tray A|4")
        .gives("Tray A 4");
  }

  @Test
  void ofTwoCountsOfOneDayTheLowerOneCounts() {
    stock("Crank|Red|Tray A|2|2026-01-01")
        .counted("2026-02-20|Crank|Red|Tray A|4\n2026-02-20|Crank|Red|Tray A|3")
        .gives("Tray A 3");
  }
}
