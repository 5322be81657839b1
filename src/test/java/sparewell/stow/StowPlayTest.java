package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sparewell.finding.Cell;
import sparewell.season.Compartment;
import sparewell.season.Season;
import sparewell.season.SeasonSketch;

/** The steps of a plan are carried out on the stow they start from, box by box, by name. */
class StowPlayTest {
  private static final String OUTSIDE = "outside";

  static IntStream seeds() {
    return IntStream.range(0, 25);
  }

  private static StowCases.Case drawn(int seed) {
    return StowCases.planted(10 + seed % 9, 4 + seed % 3, seed);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void everyBoxIsWhereItIsTakenFromAndTheNextRunAsksForNothing(int seed) {
    StowCases.Case drawn = drawn(seed);
    Season season = drawn.season();
    StowPlan plan = StowPlanner.plan(season, drawn.onHand());
    Map<String, String> at = new HashMap<>();
    season.boxes().forEach(box -> at.put(box.name(), box.compartment()));
    StowSetup setup = new StowSetup(season, plan.loads(), drawn.onHand());
    for (MoveStep step : plan.steps()) {
      switch (step.kind()) {
        case MOVE -> go(at, step.box(), step.from(), step.to());
        case LIFT_OUT -> go(at, step.box(), step.from(), OUTSIDE);
        case PUT_IN -> go(at, step.box(), OUTSIDE, step.to());
        case SWAP -> {
          go(at, step.box(), step.from(), step.to());
          go(at, step.swappedWith(), step.to(), step.from());
        }
        default -> throw new IllegalStateException();
      }
      withinLimits(setup, at, step.to());
    }
    plan.boxes().forEach(box -> assertEquals(box.toCompartment(), at.get(box.box())));
    StowPlan next = StowPlanner.plan(standing(season, at), drawn.onHand());
    assertEquals(List.of(), next.steps(), "asked again");
  }

  private static void go(Map<String, String> at, String box, String from, String to) {
    assertEquals(from, at.get(box), box);
    at.put(box, to);
  }

  /** The place that was just filled, as it stands then. */
  private static void withinLimits(StowSetup setup, Map<String, String> at, String filled) {
    int place = setup.placeIndex.get(filled);
    long load = 0;
    long volume = 0;
    for (int i = 0; i < setup.problem.boxCount(); i++) {
      boolean here = at.get(setup.box(i).name()).equals(filled);
      load += here ? setup.problem.weightMg()[i] : 0;
      volume += here ? setup.problem.volumeMm3()[i] : 0;
    }
    assertTrue(load <= setup.problem.loadRoomMg()[place], filled);
    assertTrue(volume <= setup.problem.volumeRoomMm3()[place], filled);
  }

  private static Season standing(Season season, Map<String, String> at) {
    SeasonSketch sketch = SeasonSketch.of(season);
    sketch.boxes = season.boxes().stream().map(box -> box.in(at.get(box.name()))).toList();
    return sketch.season();
  }

  @Test
  void theOrderOfTheRowsSettlesNothing() {
    for (int seed = 0; seed < 8; seed++) {
      StowCases.Case drawn = drawn(seed);
      SeasonSketch sketch = SeasonSketch.of(drawn.season());
      sketch.boxes = shuffled(drawn.season().boxes(), seed);
      sketch.compartments = shuffled(drawn.season().compartments(), seed);
      StowPlan one = StowPlanner.plan(drawn.season(), drawn.onHand());
      StowPlan two = StowPlanner.plan(sketch.season(), drawn.onHand());
      assertEquals(one.boxes(), two.boxes());
      assertEquals(one.steps(), two.steps());
      assertEquals(one.curve(), two.curve());
    }
  }

  private static <T> List<T> shuffled(List<T> rows, int seed) {
    List<T> other = new ArrayList<>(rows);
    Collections.shuffle(other, new Random(seed));
    return other;
  }

  @Test
  void aPositionOutsideAnyBoatWithholdsThePlan() {
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Bow", 45_000, 0, 0)
            .box("A", "Bow", 5)
            .box("B", "Stern", 1);
    StowPlan plan = boats.plan();
    assertEquals(StowPlan.Outcome.REFUSED, plan.outcome());
    assertEquals(List.of(), plan.steps());
    assertEquals(List.of(), plan.curve());
    List<Compartment> places = ((Refusal.Outside) plan.refusal().orElseThrow()).places();
    assertEquals(
        List.of(new Cell("Compartments", 3, 2)),
        places.stream().map(Compartment::positionAt).toList());
    plan.boxes().forEach(box -> assertEquals(Reason.WITHHELD, box.reason()));
  }
}
