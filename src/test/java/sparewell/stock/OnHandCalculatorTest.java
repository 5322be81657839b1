package sparewell.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.finding.Code;
import sparewell.units.MassUnit;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

/** The arithmetic is that of the workbook contract, worked by hand. */
class OnHandCalculatorTest {
  private static final String TRIPS =
      "Trip|Date|Hours\nJan|2026-01-10|8\nFeb|2026-02-10|8\nMar|2026-03-10|8";

  private static OnHand onHand(String stock, String losses, String restocks) {
    return OnHandCalculator.of(
        Reading.of(
                Books.season()
                    .plus("Boxes", "Tray B|Stern")
                    .with("Trips", TRIPS)
                    .with(
                        "Stock",
                        "Style|Colour|Box|Count|Counted on|Carry at least|Weight each" + stock)
                    .with("Losses", "Trip|Style|Colour|Lost" + losses)
                    .with("Restocks", "Date|Style|Colour|Box|Count" + restocks)
                    .without("Style hours"))
            .season());
  }

  private static List<String> holdings(OnHand onHand) {
    return onHand.holdings().stream().map(h -> h.place().name() + " " + h.pieces()).toList();
  }

  private static List<Code> codes(OnHand onHand) {
    return onHand.findings().stream().map(f -> f.code()).toList();
  }

  @ParameterizedTest
  @CsvSource({
    "2026-01-01, 3", // 10 - 1 - 2 - 4
    "2026-01-10, 4", // what was lost on the day of the count is in it
    "2026-02-09, 4",
    "2026-02-10, 6",
    "2026-03-10, 10",
    "2026-05-01, 10"
  })
  void lossesAfterTheCountComeOff(String countedOn, int pieces) {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|10|" + countedOn,
            "\nJan|Crank|Red|1\nFeb|Crank|Red|2\nMar|Crank|Red|4",
            "");
    assertEquals(List.of("Tray A " + pieces), holdings(onHand));
    assertEquals(List.of(), codes(onHand));
  }

  @ParameterizedTest
  @CsvSource({"2026-01-01, 18", "2026-02-01, 15", "2026-02-02, 15", "2026-03-01, 10", "'', 10"})
  void restocksAfterTheCountAreAdded(String countedOn, int pieces) {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|10|" + countedOn,
            "",
            "\n2026-02-01|Crank|Red|Tray A|3\n2026-03-01|Crank|Red|Tray A|5");
    assertEquals(List.of("Tray A " + pieces), holdings(onHand));
  }

  @Test
  void lossesComeOffTheBoxAboardThatHoldsMost() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|4|2026-01-01\nCrank|Red|Tray B|6|2026-01-01\nCrank|Red|Shelf|50|2026-01-01",
            "\nJan|Crank|Red|3\nFeb|Crank|Red|2",
            "");
    // Tray B 6 - 3, then Tray A 4 - 2
    assertEquals(List.of("Shelf 50", "Tray A 2", "Tray B 3"), holdings(onHand));
    assertEquals(5, onHand.items().get(0).aboard());
    assertEquals(50, onHand.items().get(0).ashore());
  }

  @Test
  void whatOneBoxCannotGiveComesOffTheNext() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|2|2026-01-01\nCrank|Red|Tray B|3|2026-01-01",
            "\nJan|Crank|Red|4",
            "");
    assertEquals(List.of("Tray A 1", "Tray B 0"), holdings(onHand));
    assertEquals(List.of(), codes(onHand));
  }

  @Test
  void belowZeroIsZeroAndAsksForARecount() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|2|2026-01-01\nCrank|Red|Shelf|5|2026-01-01",
            "\nJan|Crank|Red|10",
            "");
    assertEquals(List.of("Shelf 0", "Tray A 0"), holdings(onHand));
    assertEquals(List.of(Code.RECOUNT), codes(onHand));
    assertEquals(
        "Crank Red: more was lost since the count than was there (3 too many)",
        onHand.findings().get(0).message());
    assertEquals("Stock", onHand.findings().get(0).at().sheet());
    assertEquals(2, onHand.findings().get(0).at().row());
  }

  @Test
  void aLaterRestockMakesUpForAnEarlierLoss() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|2|2026-01-01",
            "\nJan|Crank|Red|5",
            "\n2026-02-01|Crank|Red|Tray A|10");
    assertEquals(List.of("Tray A 7"), holdings(onHand));
    assertEquals(List.of(), codes(onHand));
  }

  @Test
  void eachBoxHasItsOwnDateOfCount() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|9|2026-02-20\nCrank|Red|Tray B|4|2026-01-01",
            "\nJan|Crank|Red|1\nMar|Crank|Red|2",
            "");
    // the loss of January is in Tray A's count, so it was Tray B's; that of March comes off Tray A
    assertEquals(List.of("Tray A 7", "Tray B 3"), holdings(onHand));
  }

  @Test
  void lossesOfWhatIsOnlyAshoreComeOffThere() {
    OnHand onHand = onHand("\nCrank|Red|Shelf|9|2026-01-01", "\nJan|Crank|Red|2", "");
    assertEquals(List.of("Shelf 7"), holdings(onHand));
  }

  @Test
  void aRestockIntoANewPlaceIsCountedThere() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|2|2026-01-20",
            "\nMar|Crank|Red|1",
            "\n2026-02-01|Crank|Red|Tray B|6\n2026-02-02|Worm|Pink|Tray A|1.5");
    assertEquals(List.of("Tray A 2", "Tray B 5", "Tray A 15"), holdings(onHand));
    assertEquals(List.of(Code.RESTOCK_WITHOUT_ROW, Code.RESTOCK_WITHOUT_ROW), codes(onHand));
  }

  @Test
  void lossesThatNameNoItemAreNoted() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|9|2026-01-20\nCrank|Blue|Tray A|9|2026-01-20",
            "\nJan|Crank||2\nFeb|Crank||2\nMar|Crank|Pink|1",
            "");
    assertEquals(List.of("Tray A 9", "Tray A 9"), holdings(onHand));
    assertEquals(List.of(Code.LOSS_WITHOUT_ITEM), codes(onHand));
    assertEquals(3, onHand.findings().get(0).details().get(0));
  }

  @Test
  void twoRowsOfOnePlaceAreOneHolding() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|9|2026-01-01\nCrank|Red|Tray A|1|2026-02-20",
            "\nJan|Crank|Red|2",
            "");
    assertEquals(List.of("Tray A 8"), holdings(onHand));
  }

  @Test
  void theItemsOwnFloorAndWeightBeatTheStyles() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|2||4|0.75\nCrank|Red|Tray B|3||5|\nCrank|Blue|Tray A|1|||", "", "");
    OnHand.ItemStock red = onHand.items().get(0);
    assertEquals(5, red.carryAtLeast().getAsInt());
    assertEquals(0.75, red.weightEach().orElseThrow().in(MassUnit.OUNCE), 2e-5);
    assertEquals("7.50", red.packPrice().orElseThrow().toPlainString());
    OnHand.ItemStock blue = onHand.items().get(1);
    assertEquals(true, blue.carryAtLeast().isEmpty());
    assertEquals(0.5, blue.weightEach().orElseThrow().in(MassUnit.OUNCE), 2e-5);
    assertEquals(1.5, onHand.holdings().get(0).weight().orElseThrow().in(MassUnit.OUNCE), 1e-4);
  }

  @Test
  void whatWasAddedOnADayWasThereBeforeWhatWasLost() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|0|2026-01-01\nCrank|Red|Tray B|3|2026-01-01",
            "\nFeb|Crank|Red|2",
            "\n2026-02-10|Crank|Red|Tray A|5");
    assertEquals(List.of("Tray A 3", "Tray B 3"), holdings(onHand));
  }

  @Test
  void moreLostThanEverAddedAsksForACountWhereItWasAdded() {
    OnHand onHand = onHand("", "\nMar|Crank|Red|4", "\n2026-02-01|Crank|Red|Tray B|3");
    assertEquals(List.of("Tray B 0"), holdings(onHand));
    assertEquals(List.of(Code.RECOUNT, Code.RESTOCK_WITHOUT_ROW), codes(onHand));
    assertEquals("Restocks", onHand.findings().get(0).at().sheet());
    assertEquals(List.of("Crank Red", 1), onHand.findings().get(0).details());
    assertEquals(List.of("Crank Red", "Tray B"), onHand.findings().get(1).details());
  }

  // The earliest count of the style tells from when on a loss can be missing in it.
  @ParameterizedTest
  @CsvSource({
    "2026-01-10, 2026-02-20, 2", // Jan was the day of a count; Feb and Mar came after
    "2026-02-20, 2026-01-10, 2",
    "2026-01-09, 2026-02-20, 3",
    "2026-02-10, 2026-02-20, 1"
  })
  void lossesThatNameNoItemCountFromTheFirstCountOn(String one, String other, int untraced) {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|9|" + one + "\nCrank|Blue|Tray A|9|" + other,
            "\nJan|Crank||1\nFeb|Crank||1\nMar|Crank||1",
            "");
    assertEquals(List.of(Code.LOSS_WITHOUT_ITEM), codes(onHand));
    assertEquals(untraced, onHand.findings().get(0).details().get(0));
  }

  @Test
  void lossesOfNothingAndOfTripsUnknownChangeNothing() {
    OnHand onHand =
        onHand(
            "\nCrank|Red|Tray A|9|2026-01-20",
            "\nFeb|Crank|Red|0\nMar|Crank|Pink|0\nDec|Crank|Red|3",
            "");
    assertEquals(List.of("Tray A 9"), holdings(onHand));
    assertEquals(List.of(), codes(onHand));
  }
}
