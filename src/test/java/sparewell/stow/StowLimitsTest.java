package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.stow.StowPlannerTest.box;
import static sparewell.stow.StowPlannerTest.codes;
import static sparewell.stow.StowPlannerTest.messages;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.units.UnitSystem;

/** Limits on where boxes may stand: size, load, side moment, reach. */
class StowLimitsTest {
  @Test
  void fitsInAnyOrientationButNotWhereItIsTooLong() {
    StowPlan plan =
        new Boats()
            .compartment("Short stern", 20, 0, 0, 60, 60, 60)
            .compartment("Tall locker", 100, 0, 0, 15, 25, 90)
            .compartment("Bow", 400, 0, 0, 120, 60, 40)
            .box("Rod tube", "Bow", 2, 80, 10, 10)
            .plan();
    assertEquals("Tall locker", box(plan, "Rod tube").toCompartment());
  }

  @Test
  void keepsMaxLoadWithLooseStockCounted() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 10)
            .compartment("Bow", 400, 0, 0)
            .stock("Anchor", "", "Stern", 1, 4)
            .box("A", "Bow", 5)
            .box("B", "Bow", 4)
            .plan();
    assertEquals("Stern", box(plan, "A").toCompartment(), "4 + 5 of 10 kg");
    assertEquals(Optional.of("Bow"), box(plan, "B").bestCompartment());
    assertEquals(13, plan.now().weightKg(), 1e-9);
  }

  @Test
  void keepsTheTackleEvenFromSideToSide() {
    Boats boats =
        new Boats()
            .compartment("Port stern", 50, -60, 0)
            .compartment("Starboard stern", 60, 60, 0)
            .compartment("Bow", 400, 0, 0)
            .box("A", "Bow", 5)
            .box("B", "Bow", 5);
    StowPlan plan = boats.sideTolerance(0.5).plan();
    assertEquals(
        0, plan.best().orElseThrow().sideMomentKgM(), 1e-9, "one box on either side, not two");
    StowPlan loose = boats.sideTolerance(10).plan();
    assertEquals(-6, loose.best().orElseThrow().sideMomentKgM(), 1e-9, "both to port");
  }

  @Test
  void sideToleranceIsATenthOfTheTackleOnAFootOrWhatNobodyWouldNotice() {
    Boats light = new Boats().compartment("Stern", 50, 0, 0).box("A", "Stern", 1);
    assertEquals(0.7, light.plan().sideToleranceKgM(), 1e-9);
    assertEquals(
        60 * 0.45359237 * 0.0254, light.units(UnitSystem.US).plan().sideToleranceKgM(), 1e-9);
    Boats boats = new Boats().compartment("Stern", 50, 0, 0).box("A", "Stern", 30);
    assertEquals(30 * 0.1 * 0.3, boats.plan().sideToleranceKgM(), 1e-9);
    assertEquals(30 * 0.1 * 0.3048, boats.units(UnitSystem.US).plan().sideToleranceKgM(), 1e-9);
  }

  @Test
  void aPullALittleOverTheUsualToleranceMovesNoBox() {
    Boats boats =
        new Boats()
            .compartment("Port", 50, -17, 0)
            .compartment("Middle", 60, 0, 0)
            .box("A", "Port", 5);
    StowPlan little = boats.plan(); // 0.85 kg m of 0.7
    assertEquals("Port", box(little, "A").toCompartment());
    assertTrue(little.curve().get(0).feasible());
    assertTrue(
        little.findings().stream()
            .anyMatch(f -> f.code() == Code.SIDE_OVER_USUAL && f.done().contains("so little over")),
        "told all the same");
    assertEquals("Middle", box(boats.sideTolerance(0.7).plan(), "A").toCompartment(), "his own");
    StowPlan much =
        new Boats()
            .compartment("Port", 50, -18, 0)
            .compartment("Middle", 60, 0, 0)
            .box("A", "Port", 5)
            .plan();
    assertEquals("Middle", box(much, "A").toCompartment(), "0.9 kg m");
  }

  @Test
  void looseStockPullsToItsSideAndIsBalanced() {
    StowPlan plan =
        new Boats()
            .compartment("Port stern", 50, -50, 0)
            .compartment("Starboard stern", 60, 50, 0)
            .stock("Net", "", "Port stern", 1, 4)
            .box("A", "Port stern", 4)
            .sideTolerance(0.1)
            .plan();
    assertEquals("Starboard stern", box(plan, "A").toCompartment());
    assertTrue(messages(plan, Code.SIDE_OVER_TOLERANCE).contains("port with 400 kg·cm"));
    assertFalse(plan.curve().get(0).feasible());
    assertTrue(plan.curve().get(0).tackleCentre().isEmpty());
  }

  /** The chest pulls with 5 kg m, the box with 1 more: a pull of 7 is too much, of 4.5 is none. */
  @Test
  void whatStaysPutCountsInThePullThatNoPlanExceeds() {
    StowPlan plan =
        new Boats()
            .compartment("Aft", 50, 20, 10)
            .compartment("Bow", 400, 10, 10)
            .compartment("Locker", 300, 50, 10)
            .compartment("Middle", 200, -5, 10)
            .box("A chest", "Locker", Optional.of(Boats.kg(10)), true, false)
            .box("B", "Bow", 10)
            .sideTolerance(1)
            .plan();
    assertEquals("Middle", box(plan, "B").toCompartment());
    assertFalse(plan.steps().get(0).overSide());
    assertTrue(done(plan).contains("pulls no more than now"), done(plan));
    assertEquals(List.of("B", "A chest"), plan.boxes().stream().map(BoxPlan::box).toList());
  }

  @Test
  void whereNothingMayMoveAPullToASideIsTold() {
    StowPlan plan =
        new Boats()
            .compartment("Locker", 300, 50, 10)
            .box("Chest", "Locker", Optional.of(Boats.kg(10)), true, false)
            .sideTolerance(1)
            .plan();
    assertTrue(messages(plan, Code.SIDE_OVER_TOLERANCE).contains("starboard with 500 kg·cm"));
    assertEquals("no box may be moved that would mend it", done(plan));
  }

  private static String done(StowPlan plan) {
    return plan.findings().stream()
        .filter(finding -> finding.code() == Code.SIDE_OVER_TOLERANCE)
        .map(Finding::done)
        .collect(Collectors.joining());
  }

  @Test
  void aPullToASideOnTheWayIsTold() {
    StowPlan plan =
        new Boats()
            .compartment("Bow", 400, 0, 0)
            .compartment("Port", 50, -50, 10)
            .compartment("Starboard", 50, 50, 10)
            .box("A", "Bow", 10)
            .box("B", "Bow", 10)
            .sideTolerance(1)
            .plan();
    assertEquals(List.of(true, false), plan.steps().stream().map(MoveStep::overSide).toList());
  }

  /** A move counts for 1.5 % of all tackle moved over the span: 0.03 kg m here, and gains 0.2. */
  @Test
  void aMoveCountsByTheSpanOfTheCompartmentsNotTheirStation() {
    StowPlan plan =
        new Boats()
            .compartment("Bow", 320, 0, 0)
            .compartment("Middle", 300, 0, 0)
            .box("A", "Bow", 1)
            .box("Chest", "Middle", Optional.of(Boats.kg(9)), true, false)
            .plan();
    assertTrue(box(plan, "A").moves());
  }

  @Test
  void boxesAtHandGoOnlyWhereHandsReach() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Console", 200, 0, 0, true, false)
            .compartment("Bow", 400, 0, 0)
            .box("Pliers", "Bow", Optional.of(Boats.kg(2)), false, true)
            .plan();
    assertEquals("Console", box(plan, "Pliers").toCompartment());
    assertEquals(Reason.TO_BE_AT_HAND, box(plan, "Pliers").reason());
    assertTrue(codes(plan).contains(Code.BOX_NOT_AT_HAND));
  }

  @Test
  void whatStaysPutCountsEvenAgainstALimit() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 4)
            .compartment("Middle", 200, 0, 0)
            .compartment("Bow", 400, 0, 0)
            .box("Tool chest", "Stern", Optional.of(Boats.kg(6)), true, false)
            .box("A", "Bow", 1)
            .plan();
    assertFalse(box(plan, "Tool chest").moves());
    assertEquals(Reason.STAYS_PUT, box(plan, "Tool chest").reason());
    assertEquals("Middle", box(plan, "A").toCompartment(), "the stern is full");
    assertTrue(codes(plan).contains(Code.FIXED_OVER_LIMIT));
    assertEquals(StowPlan.Outcome.MOVE, plan.outcome());
  }

  @Test
  void aBoxThatFitsNowhereStaysAndTheRestIsPlanned() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 0, 60, 40, 30)
            .compartment("Bow", 400, 0, 0, 60, 40, 30)
            .box("Rod case", "Bow", 3, 200, 15, 15)
            .box("A", "Bow", 2, 30, 20, 10)
            .plan();
    assertFalse(box(plan, "Rod case").moves());
    assertEquals(Reason.FITS_NOWHERE, box(plan, "Rod case").reason());
    assertEquals("Stern", box(plan, "A").toCompartment());
    assertTrue(codes(plan).contains(Code.BOX_FITS_NOWHERE));
  }

  @Test
  void blankSizesAndLimitsAreNotCheckedAndSaidSo() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Bow", 400, 0, 20, 60, 40, 30)
            .box("A", "Bow", 2)
            .plan();
    assertEquals("Stern", box(plan, "A").toCompartment());
    assertEquals(
        List.of(Code.BOX_SIZE_UNKNOWN, Code.COMPARTMENT_SIZE_UNKNOWN, Code.NO_MAX_LOAD),
        codes(plan));
  }

  @Test
  void whereLimitsConflictItSaysWhichAndByHowMuch() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, 0, 5)
            .compartment("Bow", 400, 0, 5)
            .box("A", "Bow", 4)
            .box("B", "Bow", 4)
            .box("C", "Stern", 4)
            .plan();
    assertEquals(StowPlan.Outcome.REFUSED, plan.outcome());
    assertEquals(0, plan.recommendedMoves());
    assertEquals(1, plan.curve().size());
    assertFalse(plan.curve().get(0).feasible());
    assertTrue(plan.best().isEmpty());
    String text = messages(plan, Code.NO_STOW_PLAN);
    assertTrue(text.startsWith("no plan keeps every limit"), text);
    assertTrue(text.contains("3.00 kg over its max load"), text);
    assertTrue(text.contains("there is a plan without the max loads"), text);
    assertTrue(codes(plan).contains(Code.COMPARTMENT_OVER_LOAD));
  }

  @Test
  void whatStaysPutTakesItsRoomAndPullsToItsSide() {
    StowPlan plan =
        new Boats()
            .compartment("Stern", 50, -30, 0, 50, 20, 10)
            .compartment("Bow", 450, 40, 0, 50, 20, 10)
            .box("Chest", "Stern", Optional.of(Boats.kg(5)), true, false, 42.5, 10, 10)
            .box("A", "Bow", 2, 43, 10, 10)
            .sideTolerance(9)
            .plan();
    assertEquals("Bow", box(plan, "A").toCompartment(), "4.25 of 8.5 l are left, it takes 4.3 l");
    // 5 kg at 30 cm to port, 2 kg at 40 cm to starboard: -0.7 kg m of 7 kg.
    assertEquals(-0.7, plan.now().sideMomentKgM(), 1e-9);
    assertEquals(Boats.cm(-10), plan.now().sideCentre().orElseThrow());
    // 5 kg at 0.5 m, 2 kg at 4.5 m: 11.5 kg m of 7 kg.
    assertEquals(11.5, plan.now().momentKgM(), 1e-9);
    assertEquals(9, plan.sideToleranceKgM(), 1e-9);
    assertTrue(new Moment(0, 0, 0).sideCentre().isEmpty());
  }
}
