package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.workbook.Books;

/** Items of losses, stock and plans, named in full or in part. */
class ItemsReadTest {
  @Test
  void aLossWithoutColourMeansTheOnlyItemThatFits() {
    Reading reading = Reading.with("Losses", "Trip|Style|Lost\nT1|Crank|1\nT1|Crank|2");
    assertEquals(new ItemId("Crank", "3/8", "Red"), reading.season().losses().get(0).item());
    assertEquals(
        "losses of style Crank name no size or colour (pieces: 3), but only one item can be meant",
        reading.only(Code.ONLY_ITEM).message());
  }

  @Test
  void aLossWithoutColourStaysOpenAmongSeveralItems() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Stock", "Crank|'3/8|Blue|Tray A|3")
                .with("Losses", "Trip|Style|Size|Lost\nT1|Crank|'3/8|1\nT1|Crank||4"));
    assertEquals(new ItemId("Crank", "3/8", ""), reading.season().losses().get(0).item());
    assertEquals(List.of("note Losses B2 ITEM_PARTLY_NAMED"), reading.lines());
    assertTrue(reading.findings().get(0).message().contains("(pieces: 5)"));
  }

  @Test
  void aColourNotInStockIsRemarkedWithTheOneProbablyMeant() {
    Reading reading =
        Reading.with("Losses", "Trip|Style|Colour|Lost\nT1|Worm|Gren|1\nT1|Worm|Pink|1");
    assertEquals(
        List.of(
            "warning Losses C2 DID_YOU_MEAN",
            "note Losses C2 ITEM_NOT_IN_STOCK",
            "note Losses C3 ITEM_NOT_IN_STOCK"),
        reading.lines());
    assertEquals(
        "'Gren' in Colour differs from 'Green' by a letter or two; did you mean that?",
        reading.only(Code.DID_YOU_MEAN).message());
    assertEquals("Gren", reading.season().losses().get(0).item().colour());
  }

  @Test
  void familiesCoversAndColoursThatLookAlikeAreRemarkedOnce() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Styles", "Spoon|Hard bait\nJig|Hard bait")
                .plus(
                    "Trips",
                    "T2|2026-03-02|5|1|woods\nT3|2026-03-03|5|1|grass\nT4|2026-03-04|5|1|gras")
                .plus("Stock", "Worm||Greeen|Tray A|1"));
    assertEquals(
        List.of(
            "warning Styles B4 DID_YOU_MEAN",
            "warning Stock C5 DID_YOU_MEAN",
            "warning Trips E3 DID_YOU_MEAN"),
        reading.lines());
  }

  @Test
  void aPlanNamesColours() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Stock", "Worm||Black, blue|Tray A|1\nWorm||Pearl|Tray A|1")
                .with("Events", "Event|Date|Hours|Box|Slots\nCup|2026-08-01|8|tray a|12")
                .with(
                    "Event plan",
                    "Event|Style|Hours|Colors\nCup|Worm|3|green, PEARL;green\nCup|Worm|2|\n"
                        + "Cup|Worm|1|black, blue\nCup|Worm|1|Paerl\nCup|Worm|1|Gold"));
    Event cup = reading.season().events().get(0);
    assertEquals("Tray A", cup.box());
    assertEquals(12, cup.slots().getAsInt());
    assertEquals(
        List.of(
            List.of("Green", "Pearl"),
            List.of(),
            List.of("Black, blue"),
            List.of("Paerl"),
            List.of("Gold")),
        cup.plan().stream().map(Event.PlanLine::colours).toList());
    assertEquals(List.of("warning Event plan D5 DID_YOU_MEAN"), reading.lines());
  }

  @Test
  void anEventKeepsWhatIsGoodInItsRow() {
    Reading reading =
        Reading.with(
            "Events",
            "Event|Date|Hours|Days|Box|Slots|Chance wanted\n"
                + "Cup|2026-08-01|8|-1|Nowhere|few|2\nBowl|2026-08-01|0\nBash|soon|8");
    assertEquals(1, reading.season().events().size());
    assertEquals(
        List.of(
            "error Events D2 NOT_POSITIVE",
            "error Events E2 UNKNOWN_KEY",
            "error Events F2 NOT_A_NUMBER",
            "error Events G2 BAD_CHANCE",
            "error Events C3 NOT_POSITIVE",
            "error Events B4 NOT_A_DATE"),
        reading.lines());
    assertEquals(1, reading.season().events().get(0).days());
  }

  @Test
  void anItemTwiceInABoxIsRemarked() {
    Reading reading = Reading.plus("Stock", "CRANK|'3/8|red|Tray A|1");
    assertEquals(List.of("note Stock A5 SAME_PLACE_TWICE"), reading.lines());
    assertEquals(4, reading.season().stock().size());
  }

  @Test
  void aCountInTheFutureIsRemarked() {
    Reading reading = Reading.plus("Stock", "Crank|'3/8|Blue|Tray A|1|2026-07-01");
    assertEquals(List.of("warning Stock F5 COUNTED_IN_FUTURE"), reading.lines());
  }

  @Test
  void longRunsOfNotesAreCounted() {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < 60; i++) {
      rows.append("\nT1|Worm|Pink|1");
    }
    Reading reading = Reading.with("Losses", "Trip|Style|Colour|Lost" + rows);
    assertEquals(51, reading.findings().size());
    assertEquals("10 more notes say the same (I-072)", reading.only(Code.MORE_LIKE_THIS).message());
  }
}
