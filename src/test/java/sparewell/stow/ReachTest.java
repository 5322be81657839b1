package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sparewell.season.Event;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;
import sparewell.season.SeasonSketch;
import sparewell.units.Length;
import sparewell.units.LengthUnit;

/** Minutes a day in boxes not at hand, worked out by hand. */
class ReachTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 3, 1);

  /** Twelve jigs in two boxes, nine of them in A; 8 worms in B. */
  private static Boats boats() {
    return new Boats()
        .compartment("Stern", 50, 0, 0)
        .compartment("Console", 60, 0, 0, true, false)
        .box("A", "Stern", 1)
        .box("B", "Console", 1)
        .stock("Jig", "A", "Stern", 9, 0.01)
        .stock("Jig", "B", "Console", 3, 0.01)
        .stock("Worm", "B", "Console", 8, 0.01);
  }

  private static SeasonSketch fished() {
    SeasonSketch sketch = SeasonSketch.of(boats().season());
    sketch.asOf = TODAY;
    SeasonMaker log = new SeasonMaker();
    log.trip("Old", TODAY.minusMonths(13), 8, "Jig", 50);
    log.trip("One", TODAY.minusMonths(5), 2, 16, "").thrown("One", "Jig", 6);
    log.trip("Two", TODAY.minusDays(3), 2, 16, "")
        .thrown("Two", "Jig", 2)
        .thrown("Two", "Worm", 10);
    sketch.trips = log.trips;
    sketch.styleHours = log.styleHours;
    return sketch;
  }

  @Test
  void hoursOfTheLastTwelveMonthsFallOnTheBoxesByPieces() {
    Map<String, Double> minutes =
        Reach.minutesByBox(fished().season(), boats().onHand()).orElseThrow();
    // Jig 8 hours on 4 days: 2 a day, 3/4 of it out of A; Worm 2.5 a day out of B.
    assertEquals(2 * 0.75 * 1.5, minutes.get("A"), 1e-9);
    assertEquals((2 * 0.25 + 2.5) * 1.5, minutes.get("B"), 1e-9);
    StowPlan.ReachChange reach =
        StowPlanner.plan(fished().season(), boats().onHand()).reach().orElseThrow();
    assertEquals(2.25, reach.nowMinutes(), 1e-9);
  }

  @Test
  void anEventsPlanComesFirst() {
    SeasonSketch sketch = fished();
    Event.PlanLine line = SeasonMaker.line("Worm", 12);
    sketch.events = new SeasonMaker().event("Open", TODAY.plusDays(9), 16, 2, line).events;
    Map<String, Double> minutes =
        Reach.minutesByBox(sketch.season(), boats().onHand()).orElseThrow();
    assertEquals(0, minutes.get("A"), 1e-9);
    assertEquals(6 * 1.5, minutes.get("B"), 1e-9);
  }

  @Test
  void withoutHoursNothingIsKnown() {
    assertTrue(Reach.minutesByBox(boats().season(), boats().onHand()).isEmpty());
  }

  @Test
  void withoutACompartmentAtHandNothingIsToBeWon() {
    Boats nowhere = new Boats().compartment("Stern", 50, 0, 0).compartment("Console", 60, 0, 0);
    SeasonSketch sketch = fished();
    sketch.compartments = nowhere.season().compartments();
    assertTrue(Reach.minutesByBox(sketch.season(), boats().onHand()).isEmpty());
  }

  @Test
  void piecesAshoreOrLooseCostNoReaching() {
    Boats more =
        boats()
            .compartment("Shed", 0, 0, 0, false, true)
            .stock("Jig", "Tub", "Shed", 30, 0.01)
            .stock("Jig", "", "Stern", 30, 0.01);
    Map<String, Double> minutes =
        Reach.minutesByBox(fished().season(), more.onHand()).orElseThrow();
    assertEquals(Reach.minutesByBox(fished().season(), boats().onHand()).orElseThrow(), minutes);
  }

  /** At the usual weight the centre wins; whoever asks for it gets the box at hand. */
  @Test
  void theAnglerWeighsReachAgainstTheCentre() {
    SeasonSketch sketch = fished();
    moves("B", 2.25 + 4.5, sketch.season()); // 10 cm further aft
    sketch.reachWorth = Length.of(10, LengthUnit.CENTIMETRE);
    moves("A", 0, sketch.season());
  }

  private static void moves(String box, double plannedMinutes, Season season) {
    StowPlan plan = StowPlanner.plan(season, boats().onHand());
    assertEquals(List.of(box), plan.steps().stream().map(MoveStep::box).toList());
    assertEquals(plannedMinutes, plan.reach().orElseThrow().plannedMinutes(), 1e-9);
    double minutes = plan.boxes().get(0).reachMinutes().getAsDouble();
    assertEquals(box.equals("A") ? 2.25 : 4.5, minutes, 1e-9);
  }
}
