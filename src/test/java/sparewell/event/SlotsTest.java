package sparewell.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.event.EventPackerTest.jigs;
import static sparewell.event.EventPackerTest.need;
import static sparewell.event.EventPackerTest.pack;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.event.EventPacking.Action;
import sparewell.event.EventPacking.Line;
import sparewell.finding.Code;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;
import sparewell.spares.EventNeed;
import sparewell.spares.KnownForecast;

/** Items that get the slots of a box. */
class SlotsTest {
  @Test
  void slotsGoToOneOfEachPlannedStyleFirstThenWhereTheySaveMost() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig", "Frog")
            .style("Worm")
            .pack(10, "4.00")
            .countedInPacks()
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
}
