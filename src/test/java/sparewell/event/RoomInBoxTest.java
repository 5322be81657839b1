package sparewell.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.event.EventPackerTest.jigs;
import static sparewell.event.EventPackerTest.kit;
import static sparewell.event.EventPackerTest.need;
import static sparewell.event.EventPackerTest.pack;
import static sparewell.event.EventPackerTest.told;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import sparewell.event.EventPacking.Action;
import sparewell.event.EventPacking.Line;
import sparewell.season.SeasonMaker;
import sparewell.spares.KnownForecast;

/** Pieces that leave the box of an event to make room, and the boxes they go to. */
class RoomInBoxTest {
  @Test
  void whatTheEventDoesNotWantGoesBackToItsKind() {
    SeasonMaker maker =
        jigs()
            .plain("Frog")
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

  /**
   * First out of what the event has no use for: pieces with a home elsewhere, then the least
   * important.
   */
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
            .plain("Jig")
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
    SeasonMaker family = kit(1).style("Net", "Tools").aboard("Net", "", "Tube", 1);
    assertTrue(moved(family).contains("take_out Pliers 2 0 > Tube"));
    assertTrue(moved(family).contains("take_out Hooks 30 0 > Bow"));
  }

  /** More of a wanted item stays by what it still saves, before the style's importance alone. */
  @Test
  void whatStillSavesLossesStaysBeforeWhatMattersMore() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .style("Frog")
            .importance(2)
            .aboard("Jig", "", "Kit", 30)
            .aboard("Frog", "", "Kit", 9)
            .boxedEvent(
                "Cup", AS_OF, 8, 1, "Kit", OptionalInt.of(3), line("Jig", 24), line("Frog", 1));
    KnownForecast forecast = new KnownForecast().negBin("Jig", 0.1, 0.6).poisson("Frog", 0.01);
    assertEquals(
        List.of("take_out Frog 8 0", "leave Jig 30 2", "leave Frog 1 1"),
        pack(maker, forecast).lines().stream().map(EventPackerTest::told).toList());
  }
}
