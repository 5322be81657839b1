package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.finding.Code;
import sparewell.finding.Finding;

/** Plans under each kind of limit; the right answers are plain from the small boats. */
class StowPlannerTest {
  static BoxPlan box(StowPlan plan, String name) {
    return plan.boxes().stream().filter(b -> b.box().equals(name)).findFirst().orElseThrow();
  }

  static List<Code> codes(StowPlan plan) {
    return plan.findings().stream().map(Finding::code).toList();
  }

  static String messages(StowPlan plan, Code code) {
    return plan.findings().stream()
        .filter(finding -> finding.code() == code)
        .map(Finding::message)
        .collect(Collectors.joining("\n"));
  }

  /** Stern and bow, room for two trays each by volume (0.85 x 10 l = 8.5 l). */
  private static Boats twoEnds() {
    return new Boats()
        .compartment("Stern", 50, 0, 0, 50, 20, 10)
        .compartment("Bow", 450, 0, 0, 50, 20, 10);
  }

  /** Both full: the heavier of the bow's boxes and the lighter of the stern's stand wrongly. */
  private static Boats fullEnds() {
    return twoEnds()
        .box("Jigs", "Bow", 6, 40, 10, 10)
        .box("Crankbaits", "Stern", 1, 40, 10, 10)
        .box("Weights", "Stern", 8, 40, 10, 10)
        .box("Worms", "Bow", 2, 40, 10, 10);
  }

  @Test
  void heavyBoxesGoAftAndLightOnesMakeRoom() {
    // Common practice, no source: light forward, heavy aft.
    StowPlan plan = fullEnds().plan();
    assertEquals("Stern", box(plan, "Jigs").toCompartment());
    assertEquals("Bow", box(plan, "Crankbaits").toCompartment());
    assertFalse(box(plan, "Weights").moves());
    assertEquals(2, plan.recommendedMoves());
    assertEquals(0, plan.bestGapPercent());
    assertEquals(StowPlan.Outcome.MOVE, plan.outcome());
    // (8 + 6) kg at 0.5 m, (1 + 2) kg at 4.5 m: (7 + 13.5) / 17 m
    assertEquals(20.5 / 17, plan.best().orElseThrow().centre().get().micrometres() * 1e-6, 1e-6);
    assertEquals(List.of(MoveStep.Kind.SWAP), plan.steps().stream().map(MoveStep::kind).toList());
    assertEquals(OptionalInt.of(1), plan.steps().get(0).number());
    assertEquals(
        List.of(1, 2),
        plan.boxes().stream()
            .filter(BoxPlan::moves)
            .map(row -> row.step().getAsInt())
            .sorted()
            .toList());
    assertFalse(codes(plan).contains(Code.NO_STOW_PLAN));
    assertTrue(plan.curve().get(0).feasible());
    assertEquals(0, plan.curve().get(0).gainPercent().getAsDouble(), 1e-9);
    assertEquals(0, plan.curve().get(1).gainPercent().getAsDouble(), 1e-9);
    assertEquals(100, plan.curve().get(2).gainPercent().getAsDouble(), 1e-9);
    assertEquals(3, plan.curve().size());
  }

  @Test
  void recommendsTheMovesThatAreWorthTheirTrouble() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 0, 0, 0)
            .compartment("Bow", 400, 0, 0)
            .box("A", "Bow", 5)
            .box("B", "Bow", 3)
            .box("C", "Bow", 1.9)
            .box("D", "Bow", 0.1)
            .plan();
    // 5, 8, 9.9, 10 of 10 kg aft; the last brings 1 % of the way from bow to stern, not 1.5 %.
    List<Double> gains = plan.curve().stream().map(row -> row.gainPercent().getAsDouble()).toList();
    assertEquals(5, gains.size());
    assertEquals(50, gains.get(1), 1e-9);
    assertEquals(80, gains.get(2), 1e-9);
    assertEquals(99, gains.get(3), 1e-9);
    assertEquals(100, gains.get(4), 1e-9);
    assertEquals(3, plan.recommendedMoves());
    assertEquals(4, plan.bestMoves());
    assertEquals("Bow", box(plan, "D").toCompartment());
    assertEquals(Optional.of("Stern"), box(plan, "D").bestCompartment());
  }

  @Test
  void theCurveStopsAfterFifteenMoves() {
    Boats boats = new Boats().compartment("Stern", 0, 0, 0).compartment("Bow", 400, 0, 0);
    for (int box = 0; box < 22; box++) {
      boats.box("Box " + box, "Bow", 2);
    }
    StowPlan plan = boats.plan();
    assertEquals(16, plan.curve().size());
    assertEquals(22, plan.bestMoves());
    assertEquals(22, plan.recommendedMoves(), "each brings 4.5 % of the way");
  }

  @Test
  void whatLiesAshoreIsLeftOut() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Garage", 0, 0, 0, false, true)
            .box("A", "Stern", 2)
            .box("Winter box", "Garage", 9)
            .stock("Worms", "", "Garage", 100, 0.01)
            .plan();
    assertEquals(1, plan.boxes().size());
    assertEquals(2, plan.now().weightKg(), 1e-9);
    assertEquals(StowPlan.Outcome.STAYS, plan.outcome());
    assertEquals(100, plan.curve().get(0).gainPercent().getAsDouble());
  }

  @Test
  void unknownWeightsAreCountedAndNamed() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .box("A", "Stern", Optional.empty(), false, false)
            .stock("Jigs", "A", "Stern", 10, 0.014)
            .stock("Odds", "A", "Stern", 7, 0)
            .stock("Floats", "", "Stern", 3, 0)
            .plan();
    BoxLoad load = plan.loads().boxes().get(0);
    assertEquals(140_000, load.weight().milligrams());
    assertEquals(7, load.unknownPieces());
    assertFalse(load.emptyWeightKnown());
    assertEquals("A has no empty weight", messages(plan, Code.BOX_WEIGHT_UNKNOWN).strip());
  }

  @Test
  void emptyBoatsAndBoatsWithoutBoxesGiveAPlanWithoutMoves() {
    StowPlan none = new Boats().plan();
    assertEquals(StowPlan.Outcome.NOTHING_TO_MOVE, none.outcome());
    assertTrue(none.now().centre().isEmpty());
    StowPlan loose =
        new Boats().compartment("Stern", 50, 0, 0).stock("Net", "", "Stern", 1, 2).plan();
    assertEquals(StowPlan.Outcome.NOTHING_TO_MOVE, loose.outcome());
    assertEquals(Boats.cm(50), loose.now().centre().orElseThrow());
  }

  @Test
  void boxesWithoutAnyWeightAreNotMoved() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Bow", 400, 0, 0)
            .box("A", "Bow", Optional.empty(), false, false)
            .plan();
    assertEquals(StowPlan.Outcome.STAYS, plan.outcome());
  }

  @Test
  void samePlanOnASecondRun() {
    StowCases.Case drawn = StowCases.planted(20, 6, 3);
    assertEquals(
        StowPlanner.plan(drawn.season(), drawn.onHand()),
        StowPlanner.plan(drawn.season(), drawn.onHand()));
  }

  private static List<String> reasons(StowPlan plan) {
    return plan.boxes().stream().map(row -> row.box() + ": " + row.reason().word()).toList();
  }

  @Test
  void saysWhyEachBoxIsMovedOrNot() {
    StowPlan ends = fullEnds().plan();
    assertEquals(
        List.of(
            "Crankbaits: makes room further aft",
            "Jigs: weight goes aft",
            "Weights: stands well",
            "Worms: stands well"),
        reasons(ends));
    assertEquals(Optional.of("Stern"), box(ends, "Jigs").bestCompartment());
    assertEquals(Optional.of("Bow"), box(ends, "Worms").bestCompartment());
    StowPlan little =
        new Boats()
            .compartment("Stern", 0, 0, 0)
            .compartment("Bow", 400, 0, 0)
            .box("A", "Bow", 9.9)
            .box("B", "Bow", 0.1)
            .plan();
    assertEquals(List.of("A: weight goes aft", "B: moving it would gain little"), reasons(little));
    StowPlan across =
        new Boats()
            .compartment("Port", 50, -60, 0)
            .compartment("Starboard", 50, 60, 0)
            .box("A", "Port", 5)
            .box("B", "Port", 5)
            .sideTolerance(0.1)
            .plan();
    assertEquals(
        List.of("for balance or room", "stands well"),
        across.boxes().stream().map(row -> row.reason().word()).sorted().toList());
    StowPlan tooLong =
        new Boats()
            .compartment("Stern", 50, 0, 0, 50, 20, 10)
            .compartment("Bow", 400, 0, 0, 90, 20, 10)
            .box("Tube", "Stern", 1, 80, 5, 5)
            .plan();
    assertEquals(List.of("Tube: does not fit where it is"), reasons(tooLong));
    StowPlan none = new Boats().compartment("Stern", 50, 0, 5).box("A", "Stern", 6).plan();
    assertEquals(List.of("A: no plan within all limits"), reasons(none));
    assertEquals(Optional.empty(), box(none, "A").bestCompartment());
  }

  @Test
  void withNothingToMoveTheToleranceIsTold() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .box("Chest", "Stern", Optional.of(Boats.kg(5)), true, false)
            .sideTolerance(3)
            .plan();
    assertEquals(StowPlan.Outcome.NOTHING_TO_MOVE, plan.outcome());
    assertEquals(3, plan.sideToleranceKgM(), 1e-9);
    assertEquals(Optional.of("Stern"), box(plan, "Chest").bestCompartment());
    assertEquals(plan.now(), plan.best().orElseThrow());
  }

  /** Boats that a search once left 0.3 and 1.2 % unproven. */
  @ParameterizedTest
  @ValueSource(ints = {12, 44})
  void eighteenBoxesInSixCompartmentsAreStowedProvenBest(int seed) {
    StowCases.Case drawn = StowCases.planted(18, 6, seed);
    assertEquals(0, StowPlanner.plan(drawn.season(), drawn.onHand()).bestGapPercent());
  }

  /** Shares of the whole tackle's moment: loose stock and what stays put count. */
  @Test
  void gapsAreSharesOfTheTacklesMoment() {
    StowCases.Case drawn = StowCases.planted(40, 10, 1);
    StowPlan plan = StowPlanner.plan(drawn.season(), drawn.onHand());
    assertTrue(plan.bestGapPercent() <= 0.1, "40 boxes, 10 compartments: within 0.1 %");
    StowSetup setup = new StowSetup(drawn.season(), plan.loads(), drawn.onHand());
    StowSolver.Curve curve = new StowSolver(setup.problem, Effort.USUAL).curve();
    int open = 0;
    for (int k = 0; k < curve.rows().size(); k++) {
      StowSolver.Answer answer = curve.rows().get(k);
      if (answer.found()) {
        double moment = setup.standing(answer.array()).momentKgM();
        double gap = 100 * (answer.cost() - answer.bound()) / moment;
        assertEquals(gap, plan.curve().get(k).gapPercent().getAsDouble(), 1e-9);
        open += gap > 0 ? 1 : 0;
      }
    }
    assertTrue(open > 0, "some rows of a boat of this size are not proven");
    double best = curve.best().cost() - curve.best().bound();
    assertEquals(100 * best / plan.best().orElseThrow().momentKgM(), plan.bestGapPercent(), 1e-9);
  }
}
