package sparewell.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import sparewell.event.EventPacking.Action;
import sparewell.event.EventPacking.Line;
import sparewell.event.EventPacking.PackingList;
import sparewell.finding.Code;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.SeasonMaker;
import sparewell.spares.EventNeed;
import sparewell.spares.KnownForecast;
import sparewell.spares.SparesPlanner;

class EventPackerTest {
  static EventPacking pack(SeasonMaker maker, KnownForecast forecast) {
    return EventPacker.pack(
        maker.season(),
        maker.onHand(),
        SparesPlanner.plan(maker.season(), maker.onHand(), forecast).eventNeeds());
  }

  static String told(Line line) {
    return line.action().word()
        + " "
        + line.item().style()
        + " "
        + line.pieces()
        + " "
        + line.slots();
  }

  static SeasonMaker jigs() {
    return new SeasonMaker()
        .plain("Jig")
        .aboard("Jig", "black", "Event box", 1)
        .aboard("Jig", "black", "J1", 1)
        .aboard("Jig", "black", "J2", 2)
        .ashore("Jig", "black", "Tub", 9)
        .aboard("Jig", "blue", "J1", 9);
  }

  /**
   * Mean loss 2.4: qpois(0.95, 2.4) = 5; four are aboard: ppois(4, 2.4, lower.tail = FALSE) =
   * 0.0958686; R 4.2.2.
   */
  @Test
  void takesFromTheBoxThenFromAboardThenFromAshore() {
    SeasonMaker maker =
        jigs()
            .boxedEvent(
                "Cup", AS_OF, 8, 1, "Event box", OptionalInt.of(12), line("Jig", 24, "black"));
    EventPacking packing = pack(maker, new KnownForecast().poisson("Jig", 0.1));
    PackingList list = packing.lists().get(0);
    assertEquals(List.of(1, 2, 1, 1), list.lines().stream().map(Line::pieces).toList());
    assertEquals(
        List.of(Action.LEAVE, Action.PUT_IN, Action.PUT_IN, Action.PUT_IN),
        list.lines().stream().map(Line::action).toList());
    assertEquals("Event box", list.lines().get(3).to().get().box());
    assertEquals(Optional.of(new Place("J2", "Bow")), list.lines().get(1).from());
    assertEquals("Garage", list.lines().get(3).from().get().compartment());
    assertEquals(0.0958686, list.lines().get(3).runOutProbability(), 1e-7);
    assertEquals(0, list.shortPieces());
    assertEquals(1, list.slotsUsed(), "one item shares a pocket with itself");
    assertEquals(List.of(1, 0, 0, 0), list.lines().stream().map(Line::slots).toList());
    assertTrue(packing.findings().isEmpty());
  }

  @Test
  void anEventWithoutABoxStillGetsItsList() {
    SeasonMaker maker = jigs().event("Cup", AS_OF, 8, 1, line("Jig", 24, "black"));
    PackingList list = pack(maker, new KnownForecast().poisson("Jig", 0.1)).lists().get(0);
    assertFalse(list.boxed());
    assertEquals(4, list.pieces(Action.STAYS_ABOARD));
    assertEquals(1, list.pieces(Action.PUT_IN), "from ashore");
    assertEquals("Garage", list.lines().get(0).from().get().compartment());
    assertEquals("J2", list.lines().get(0).to().get().box(), "where most of it lies");
    assertEquals("J2", list.lines().get(1).from().get().box());
  }

  @Test
  void whatIsNowhereToBeHadIsBought() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .aboard("Jig", "black", "J1", 0)
            .aboard("Jig", "blue", "J1", 2)
            .event("Cup", AS_OF, 8, 1, line("Jig", 48));
    List<Line> lines = pack(maker, new KnownForecast().poisson("Jig", 0.1)).lists().get(0).lines();
    assertEquals(List.of(2, 5, 3), lines.stream().map(Line::pieces).toList());
    assertEquals(List.of(0, 5, 3), lines.stream().map(Line::shortPieces).toList());
    assertEquals(Optional.empty(), lines.get(1).from());
    assertEquals(Action.BUY, lines.get(1).action());
  }

  /** A box with pliers, a scale and hooks, and jigs that the event wants. */
  static SeasonMaker kit(int slots) {
    return new SeasonMaker()
        .plain("Jig", "Frog")
        .style("Pliers", "Tools")
        .importance(2)
        .style("Scale", "Tools")
        .style("Hooks", "Terminal")
        .pack(10, "3.00")
        .countedInPacks()
        .aboard("Jig", "", "J1", 9)
        .aboard("Pliers", "", "Kit", 2)
        .aboard("Scale", "", "Kit", 1)
        .aboard("Frog", "", "Kit", 1)
        .aboard("Frog", "", "J1", 1)
        .aboard("Hooks", "", "Kit", 30)
        .boxedEvent("Cup", AS_OF, 8, 1, "Kit", OptionalInt.of(slots));
  }

  @Test
  void aBoxAshoreIsNotPackedAndSaidSo() {
    SeasonMaker maker =
        jigs()
            .boxAshore("Home kit")
            .boxedEvent("Cup", AS_OF, 8, 1, "Home kit", OptionalInt.of(9), line("Jig", 24));
    EventPacking packing = pack(maker, new KnownForecast().poisson("Jig", 0.1));
    assertFalse(packing.lists().get(0).boxed());
    assertEquals(Code.EVENT_BOX_ASHORE, packing.findings().get(0).code());
  }

  @Test
  void oneBoxForTwoEventsIsPackedForTheFirst() {
    SeasonMaker maker =
        jigs()
            .boxedEvent("Cup", AS_OF, 8, 1, "Event box", OptionalInt.of(9), line("Jig", 24))
            .boxedEvent(
                "Final", AS_OF.plusDays(1), 8, 1, "Event box", OptionalInt.of(9), line("Jig", 9));
    EventPacking packing = pack(maker, new KnownForecast().poisson("Jig", 0.1));
    assertEquals("Cup", packing.lists().get(1).packedFirst().get().name());
    assertTrue(packing.lines().stream().allMatch(line -> line.event().equals("Cup")));
  }

  /** A piece in the box of the event before is at hand for the next: a place has one line. */
  @Test
  void anEventWithoutABoxListsEachPlaceOnce() {
    SeasonMaker maker =
        jigs()
            .boxedEvent("Cup", AS_OF, 8, 1, "Event box", OptionalInt.of(9), line("Jig", 24))
            .event("Next day", AS_OF.plusDays(1), 8, 1, line("Jig", 60, "black"));
    List<Line> next = pack(maker, new KnownForecast().poisson("Jig", 0.1)).lists().get(1).lines();
    assertEquals(next.size(), next.stream().map(Line::from).distinct().count(), "one line a place");
    assertEquals(10, next.stream().mapToInt(Line::pieces).sum(), "qpois(0.95, 6)");
  }

  @Test
  void noEventNoList() {
    assertTrue(pack(jigs(), new KnownForecast().poisson("Jig", 0.1)).lists().isEmpty());
  }

  static EventNeed.Item need(
      String style, double mean, double importance, boolean inPlan, int wanted) {
    return new EventNeed.Item(
        new ItemId(style, "", ""), KnownForecast.poisson(mean), importance, inPlan, wanted);
  }

  static PackingList pack(SeasonMaker maker, EventNeed.Item... items) {
    return EventPacker.pack(
            maker.season(),
            maker.onHand(),
            List.of(new EventNeed(maker.season().events().get(0), List.of(items))))
        .lists()
        .get(0);
  }

  private static List<String> words(PackingList list) {
    return list.lines().stream()
        .map(
            line ->
                line.item().style()
                    + " "
                    + line.pieces()
                    + line.from().map(place -> " " + place.box()).orElse(""))
        .toList();
  }

  @Test
  void whatIsInTheBoxStandsFirstThenAboardPlaceByPlaceThenAshoreThenWhatThereIsNot() {
    SeasonMaker maker = new SeasonMaker();
    for (String style : List.of("None", "Home", "A", "B", "C", "Box", "Idle")) {
      maker.style(style);
    }
    maker
        .ashore("Home", "", "Tub", 2)
        .aboard("None", "", "J2", 0)
        .aboard("A", "", "J1", 2)
        .aboard("B", "", "J2", 2)
        .aboard("C", "", "J1", 2)
        .aboard("C", "", "J3", 0)
        .aboard("Box", "", "Kit", 2)
        .aboard("Idle", "", "J1", 2)
        .boxedEvent("Cup", AS_OF, 8, 1, "Kit", OptionalInt.of(5));
    PackingList list =
        pack(
            maker,
            need("None", 1, 1, false, 1),
            need("Home", 1, 1, false, 1),
            need("A", 1, 1, false, 1),
            need("B", 1, 1, false, 1),
            need("C", 1, 1, false, 1),
            need("Box", 1, 1, false, 1),
            need("Idle", 1, 1, false, 0));
    assertEquals(
        List.of("Box 1 Kit", "Box 1 Kit", "Home 1 Tub", "A 1 J1", "C 1 J1", "B 1 J2", "None 1"),
        words(list));
    assertEquals(Action.TAKE_OUT, list.lines().get(0).action());
    assertEquals(5, list.slotsUsed());
    assertEquals(1, list.shortPieces());
  }

  @Test
  void plannedItemsStandBeforeOthers() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Other", "Planned")
            .aboard("Other", "", "J1", 2)
            .aboard("Planned", "", "J1", 2)
            .event("Cup", AS_OF, 8, 1);
    assertEquals(
        List.of("Planned 1 J1", "Other 1 J1"),
        words(pack(maker, need("Other", 1, 1, false, 1), need("Planned", 1, 1, true, 1))));
  }

  @Test
  void piecesComeFromTheFullestPlaceAboardBeforeAshoreAndFromNoMoreThanNeeded() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .ashore("Jig", "", "Tub", 9)
            .aboard("Jig", "", "J1", 2)
            .aboard("Jig", "", "J2", 4)
            .aboard("Jig", "", "J3", 1)
            .event("Cup", AS_OF, 8, 1);
    PackingList six = pack(maker, need("Jig", 1, 1, true, 6));
    assertEquals(List.of("Jig 4 J2", "Jig 2 J1"), words(six));
    assertEquals(
        List.of("Jig 3 Tub", "Jig 4 J2", "Jig 2 J1", "Jig 1 J3"),
        words(pack(maker, need("Jig", 1, 1, true, 10))));
  }

  @Test
  void aBoxThatHoldsAllThatIsWantedIsNoFinding() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .aboard("Jig", "", "J1", 9)
            .boxedEvent("Cup", AS_OF, 8, 1, "Kit", OptionalInt.of(3));
    EventNeed three =
        new EventNeed(maker.season().events().get(0), List.of(need("Jig", 1, 1, true, 3)));
    assertTrue(
        EventPacker.pack(maker.season(), maker.onHand(), List.of(three)).findings().isEmpty());
    PackingList four = pack(maker, need("Jig", 1, 1, true, 4));
    assertEquals(List.of("Jig 4 J1"), words(four));
  }

  @Test
  void whatIsInTheBoxIsUsedBeforeAFullerPlaceAboard() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .aboard("Jig", "", "J1", 8)
            .aboard("Jig", "", "Kit", 2)
            .boxedEvent("Cup", AS_OF, 8, 1, "Kit", OptionalInt.of(9));
    assertEquals(List.of("Jig 2 Kit", "Jig 1 J1"), words(pack(maker, need("Jig", 1, 1, true, 3))));
  }
}
