package sparewell.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.SeasonMaker.AS_OF;
import static sparewell.spares.SeasonMaker.line;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.event.EventPacking.Action;
import sparewell.event.EventPacking.Line;
import sparewell.event.EventPacking.PackingList;
import sparewell.finding.Code;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.spares.EventNeed;
import sparewell.spares.KnownForecast;
import sparewell.spares.SeasonMaker;
import sparewell.spares.SparesPlanner;

class EventPackerTest {
  private static EventPacking pack(SeasonMaker maker, KnownForecast forecast) {
    return EventPacker.pack(
        maker.season(),
        maker.onHand(),
        SparesPlanner.plan(maker.season(), maker.onHand(), forecast).eventNeeds());
  }

  private static SeasonMaker jigs() {
    return new SeasonMaker()
        .style("Jig")
        .add()
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
            .style("Jig")
            .add()
            .aboard("Jig", "black", "J1", 0)
            .aboard("Jig", "blue", "J1", 2)
            .event("Cup", AS_OF, 8, 1, line("Jig", 48));
    List<Line> lines = pack(maker, new KnownForecast().poisson("Jig", 0.1)).lists().get(0).lines();
    assertEquals(List.of(2, 5, 3), lines.stream().map(Line::pieces).toList());
    assertEquals(List.of(0, 5, 3), lines.stream().map(Line::shortPieces).toList());
    assertEquals(Optional.empty(), lines.get(1).from());
    assertEquals(Action.BUY, lines.get(1).action());
  }

  @Test
  void slotsGoToOneOfEachPlannedStyleFirstThenWhereTheySaveMost() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .add()
            .style("Frog")
            .add()
            .style("Worm")
            .pack(10, "4.00")
            .countedInPacks()
            .add()
            .aboard("Jig", "", "J", 9)
            .aboard("Frog", "", "F", 9)
            .aboard("Worm", "", "W", 90)
            .boxedEvent(
                "Cup",
                AS_OF,
                8,
                1,
                "Small",
                OptionalInt.of(3),
                line("Jig", 24),
                line("Frog", 1),
                line("Worm", 24));
    KnownForecast forecast =
        new KnownForecast().poisson("Jig", 0.1).poisson("Frog", 0.01).poisson("Worm", 0.5);
    EventPacking packing = pack(maker, forecast);
    // Worm mean 12: qpois(0.95, 12) = 18, R 4.2.2: two pockets of ten; there is one.
    assertEquals(
        List.of("put_in Jig 5 1", "put_in Frog 1 1", "put_in Worm 10 1", "stays_aboard Worm 8 0"),
        packing.lines().stream().map(EventPackerTest::told).toList());
    assertEquals(3, packing.lists().get(0).slotsUsed());
    assertEquals(0, packing.lists().get(0).shortPieces(), "aboard, though in another box");
    assertEquals(Code.EVENT_BOX_NOT_ENOUGH_SLOTS, packing.findings().get(0).code());
  }

  private static String told(Line line) {
    return line.action().word()
        + " "
        + line.item().style()
        + " "
        + line.pieces()
        + " "
        + line.slots();
  }

  @Test
  void whatTheEventDoesNotWantGoesBackToItsKind() {
    SeasonMaker maker =
        jigs()
            .style("Frog")
            .add()
            .aboard("Frog", "", "Event box", 2)
            .aboard("Jig", "blue", "Event box", 3)
            .boxedEvent(
                "Cup", AS_OF, 8, 1, "Event box", OptionalInt.of(1), line("Jig", 24, "black"));
    EventPacking packing =
        pack(maker, new KnownForecast().poisson("Jig", 0.1).poisson("Frog", 0.1));
    List<Line> out =
        packing.lines().stream().filter(line -> line.action() == Action.TAKE_OUT).toList();
    assertEquals(List.of(3, 2), out.stream().map(Line::pieces).toList());
    assertEquals("J1", out.get(0).to().get().box(), "with the other blue ones");
    assertEquals("J1", out.get(1).to().get().box(), "no frog lies anywhere else: to its family");
  }

  /** A box with pliers, a scale and hooks, and jigs that the event wants. */
  private static SeasonMaker kit(int slots) {
    return new SeasonMaker()
        .style("Jig")
        .add()
        .style("Frog")
        .add()
        .style("Pliers", "Tools")
        .importance(2)
        .add()
        .style("Scale", "Tools")
        .add()
        .style("Hooks", "Terminal")
        .pack(10, "3.00")
        .countedInPacks()
        .add()
        .aboard("Jig", "", "J1", 9)
        .aboard("Pliers", "", "Kit", 2)
        .aboard("Scale", "", "Kit", 1)
        .aboard("Frog", "", "Kit", 1)
        .aboard("Frog", "", "J1", 1)
        .aboard("Hooks", "", "Kit", 30)
        .boxedEvent("Cup", AS_OF, 8, 1, "Kit", OptionalInt.of(slots));
  }

  private static List<String> moved(SeasonMaker maker) {
    return pack(maker, need("Jig", 1, 1, true, 3)).lines().stream()
        .map(line -> told(line) + line.to().map(to -> " > " + to.name()).orElse(""))
        .toList();
  }

  @Test
  void whatTheEventDoesNotWantStaysWhilePocketsAreFree() {
    List<String> all =
        List.of(
            "leave Pliers 2 1",
            "leave Hooks 30 3",
            "leave Scale 1 1",
            "leave Frog 1 1",
            "put_in Jig 3 1 > Kit");
    assertEquals(all, moved(kit(20)));
    assertEquals(all, moved(kit(7)), "seven pockets are just enough");
    assertEquals(7, pack(kit(20), need("Jig", 1, 1, true, 3)).slotsUsed());
  }

  /** Of no use to the event: first out is what has a home elsewhere, then what matters least. */
  @Test
  void whatIsOfLeastUseMakesRoom() {
    assertEquals("take_out Frog 1 0 > J1", moved(kit(6)).get(0));
    assertEquals(
        List.of("take_out Scale 1 0 > J1", "take_out Frog 1 0 > J1"),
        moved(kit(5).box("J1")).stream().filter(told -> told.startsWith("take")).toList());
    assertEquals(
        List.of("leave Pliers 2 1", "leave Hooks 20 2", "put_in Jig 3 1 > Kit"),
        moved(kit(4)).stream().filter(told -> !told.startsWith("take")).toList(),
        "a pack of hooks goes, two stay");
  }

  @Test
  void aWantedItemLeavesMoreThanItNeedsInAPocketOfItsOwn() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .add()
            .aboard("Jig", "", "Kit", 5)
            .boxedEvent("Cup", AS_OF, 8, 1, "Kit", OptionalInt.of(2));
    assertEquals(List.of("leave Jig 5 2"), moved(maker));
  }

  @Test
  void whatMustComeOutGoesToItsFamilyElseToTheEmptiestBoxAboardElseLooseAboard() {
    assertTrue(moved(kit(1)).contains("take_out Pliers 2 0 > Bow"), "there is no such box");
    SeasonMaker boxes = kit(1).boxAshore("Attic").box("J1").box("Kit").box("Tray B").box("Tray A");
    assertTrue(moved(boxes).contains("take_out Pliers 2 0 > Tray B"));
    assertTrue(moved(boxes).contains("take_out Hooks 30 0 > Tray A"), "each family a box");
    SeasonMaker family = kit(1).style("Net", "Tools").add().aboard("Net", "", "Tube", 1);
    assertTrue(moved(family).contains("take_out Pliers 2 0 > Tube"));
    assertTrue(moved(family).contains("take_out Hooks 30 0 > Bow"));
  }

  @Test
  void slotsWithoutABoxBoundTheListAllTheSame() {
    SeasonMaker maker =
        jigs().boxedEvent("Cup", AS_OF, 8, 1, "", OptionalInt.of(1), line("Jig", 24));
    List<Line> lines = pack(maker, new KnownForecast().poisson("Jig", 0.1)).lines();
    assertEquals(1, lines.stream().mapToInt(Line::slots).sum());
    assertTrue(
        lines.stream().anyMatch(line -> line.slots() == 0 && line.action() == Action.STAYS_ABOARD));
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
  void marginalAnalysisEqualsExhaustiveSearch() {
    Random random = new Random(3);
    for (int round = 0; round < 100; round++) {
      List<EventNeed.Item> needs = new ArrayList<>();
      List<Integer> limits = new ArrayList<>();
      List<Integer> perSlot = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        needs.add(
            new EventNeed.Item(
                new ItemId("S" + i, "", ""),
                KnownForecast.negBin(0.1 + 4 * random.nextDouble(), 0.8),
                1 + random.nextInt(3),
                false,
                9));
        limits.add(random.nextInt(6));
        perSlot.add(1 + random.nextInt(3));
      }
      int slots = random.nextInt(8);
      List<Integer> packed = SlotFill.fill(needs, limits, perSlot, slots);
      int used = 0;
      for (int i = 0; i < 4; i++) {
        assertTrue(packed.get(i) <= limits.get(i));
        used += SlotFill.slots(packed.get(i), perSlot.get(i));
      }
      assertTrue(used <= slots);
      assertEquals(least(needs, limits, perSlot, 0, slots), shortage(needs, packed), 1e-9);
    }
  }

  private static double shortage(List<EventNeed.Item> needs, List<Integer> packed) {
    double sum = 0;
    for (int i = 0; i < needs.size(); i++) {
      sum += needs.get(i).importance() * needs.get(i).losses().expectedShortage(packed.get(i));
    }
    return sum;
  }

  private static double least(
      List<EventNeed.Item> needs, List<Integer> limits, List<Integer> perSlot, int i, int slots) {
    if (i == needs.size()) {
      return 0;
    }
    double best = Double.POSITIVE_INFINITY;
    for (int used = 0; used <= slots; used++) {
      int pieces = Math.min(limits.get(i), used * perSlot.get(i));
      double own = needs.get(i).importance() * needs.get(i).losses().expectedShortage(pieces);
      best = Math.min(best, own + least(needs, limits, perSlot, i + 1, slots - used));
    }
    return best;
  }

  @Test
  void noEventNoList() {
    assertTrue(pack(jigs(), new KnownForecast().poisson("Jig", 0.1)).lists().isEmpty());
  }

  private static EventNeed.Item need(
      String style, double mean, double importance, boolean inPlan, int wanted) {
    return new EventNeed.Item(
        new ItemId(style, "", ""), KnownForecast.poisson(mean), importance, inPlan, wanted);
  }

  private static List<Integer> fill(List<EventNeed.Item> needs, List<Integer> limits, int slots) {
    return SlotFill.fill(needs, limits, Collections.nCopies(needs.size(), 1), slots);
  }

  @Test
  void theFirstSlotsGoToThePlannedStylesThatMatterMost() {
    // Importance x mean loss: A 2, B 3 (6 x 0.5), C 2, D not planned.
    List<EventNeed.Item> needs =
        List.of(
            need("A", 2, 1, true, 9),
            need("B", 0.5, 6, true, 9),
            need("C", 1, 2, true, 9),
            need("D", 9, 9, false, 9));
    List<Integer> plenty = List.of(9, 9, 9, 9);
    assertEquals(List.of(0, 0, 0, 0), fill(needs, plenty, 0));
    assertEquals(List.of(0, 1, 0, 0), fill(needs, plenty, 1));
    assertEquals(List.of(1, 1, 0, 0), fill(needs, plenty, 2), "of equals the first");
    assertEquals(List.of(1, 1, 1, 0), fill(needs, plenty, 3));
    assertEquals(List.of(1, 1, 1, 1), fill(needs, plenty, 4));
    assertEquals(List.of(1, 0, 0, 0), fill(needs, List.of(9, 0, 9, 9), 1), "none of B is on hand");
  }

  @Test
  void oneItemSpeaksForItsPlannedStyle() {
    EventNeed.Item black =
        new EventNeed.Item(new ItemId("Jig", "", "black"), KnownForecast.poisson(3), 1, true, 5);
    EventNeed.Item blue =
        new EventNeed.Item(new ItemId("Jig", "", "blue"), KnownForecast.poisson(2), 1, true, 5);
    List<EventNeed.Item> needs = List.of(black, blue, need("Frog", 0.01, 1, true, 5));
    assertEquals(List.of(1, 0, 1), fill(needs, List.of(5, 5, 5), 2));
  }

  @Test
  void slotsLeftGoToWhatSavesNothingInTheOrderOfTheList() {
    List<EventNeed.Item> needs = List.of(need("A", 2, 1, false, 1), need("B", 2, 0, false, 2));
    assertEquals(List.of(1, 2), fill(needs, List.of(1, 2), 3));
    List<EventNeed.Item> equals = List.of(need("A", 2, 1, false, 3), need("B", 2, 1, false, 3));
    assertEquals(List.of(1, 0), fill(equals, List.of(3, 3), 1));
    assertEquals(List.of(1, 1), fill(equals, List.of(3, 3), 2));
  }

  private static PackingList pack(SeasonMaker maker, EventNeed.Item... items) {
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
      maker.style(style).add();
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
            .style("Other")
            .add()
            .style("Planned")
            .add()
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
            .style("Jig")
            .add()
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
            .style("Jig")
            .add()
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
            .style("Jig")
            .add()
            .aboard("Jig", "", "J1", 8)
            .aboard("Jig", "", "Kit", 2)
            .boxedEvent("Cup", AS_OF, 8, 1, "Kit", OptionalInt.of(9));
    assertEquals(List.of("Jig 2 Kit", "Jig 1 J1"), words(pack(maker, need("Jig", 1, 1, true, 3))));
  }
}
