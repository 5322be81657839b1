package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;

/** Findings about limits, to the word and the number; amounts are worked by hand. */
class StowFindingsTest {
  /** Said of any boat with blanks; left out where it is not the point. */
  private static final Set<Code> BLANKS =
      Collections.unmodifiableSet(
          EnumSet.of(Code.BOX_SIZE_UNKNOWN, Code.COMPARTMENT_SIZE_UNKNOWN, Code.NO_MAX_LOAD));

  private static List<String> said(Boats boats) {
    return boats.plan().findings().stream()
        .filter(finding -> !BLANKS.contains(finding.code()))
        .map(Finding::message)
        .toList();
  }

  /** 0.85 x 10 l = 8.5 l of room. */
  private static Boats tenLitres() {
    return new Boats().compartment("Stern", 50, 0, 20, 50, 20, 10).compartment("Bow", 400, 0, 0);
  }

  @Test
  void loadsOverTheLimitCountBoxesAndLooseStock() {
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 5)
            .compartment("Bow", 400, 0, 0)
            .stock("Anchor", "", "Stern", 2, 1.5)
            .box("A", "Stern", 6);
    assertEquals(
        List.of("Stern holds 9.00 kg now, 4.00 kg over its max load of 5.00 kg"), said(boats));
  }

  @Test
  void whatIsJustWithinALimitIsNotOver() {
    Boats boats =
        tenLitres()
            .stock("Anchor", "", "Stern", 2, 5)
            .box("A", "Stern", 10, 42.5, 10, 10)
            .box("B", "Stern", Optional.of(Boats.kg(0)), true, false, 42.5, 10, 10);
    assertEquals(List.of(), said(boats));
    Boats fixed =
        new Boats()
            .compartment("Port", 50, -50, 4, 50, 20, 10)
            .compartment("Bow", 400, 0, 0)
            .box("A", "Port", Optional.of(Boats.kg(4)), true, false, 42.5, 20, 10)
            .sideTolerance(2);
    assertEquals(List.of(), said(fixed), "load, room and side moment all at their limit");
  }

  @Test
  void volumesOverTheLimitCountAllBoxes() {
    Boats boats =
        tenLitres()
            .box("A", "Stern", 1, 40, 10, 10)
            .box("B", "Stern", Optional.of(Boats.kg(1)), true, false, 40, 10, 10)
            .box("C", "Stern", 1, 40, 10, 10);
    assertEquals(
        List.of("the boxes in Stern take 12.0 l, 3.5 l over its usable volume of 8.5 l"),
        said(boats));
  }

  @Test
  void whatStaysPutIsHeldAgainstEachLimit() {
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 3, 50, 20, 10)
            .compartment("Bow", 400, 0, 0)
            .box("Chest", "Stern", Optional.of(Boats.kg(4)), true, true, 60, 20, 10);
    assertEquals(
        List.of(
            "Chest stays put in Stern although it does not fit there",
            "Chest stays put in Stern although it should be at hand and this compartment is not",
            "Stern holds 4.00 kg now, 1.00 kg over its max load of 3.00 kg",
            "the boxes in Stern take 12.0 l, 3.5 l over its usable volume of 8.5 l",
            "what cannot be moved in Stern is already 1.00 kg over its max load",
            "what cannot be moved in Stern is already 3.5 l over its usable volume"),
        said(boats));
  }

  @Test
  void whatMayStayPutIsNotHeldAgainstAnything() {
    Boats boats =
        new Boats()
            .compartment("Console", 50, 0, 9, true, false, 50, 20, 10)
            .box("Chest", "Console", Optional.of(Boats.kg(4)), true, true, 40, 10, 10);
    assertEquals(List.of(), said(boats));
  }

  @Test
  void aBoxThatFitsNowhereAtHandIsToldFromOneThatFitsNowhere() {
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 20, 50, 20, 10)
            .compartment("Console", 200, 0, 20, true, false, 20, 20, 10)
            .box("Case", "Stern", Optional.of(Boats.kg(1)), false, false, 90, 10, 10)
            .box("Pliers", "Stern", Optional.of(Boats.kg(1)), false, true, 40, 10, 10);
    assertEquals(
        List.of(
            "Case fits into no compartment aboard",
            "Pliers fits into no compartment aboard that is at hand"),
        said(boats).stream().filter(text -> text.contains("fits")).toList());
  }

  @Test
  void boxesInTheWrongPlaceAreNamed() {
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 20, 50, 20, 10)
            .compartment("Console", 200, 0, 20, true, false, 90, 20, 10)
            .box("Tube", "Stern", Optional.of(Boats.kg(1)), false, true, 80, 5, 5);
    assertEquals(
        List.of(
            "Tube does not fit into Stern in any orientation",
            "Tube should be at hand but stands in Stern, which is not"),
        said(boats));
  }

  @Test
  void sideMomentOverTheToleranceIsSaidWithItsSide() {
    Boats port =
        new Boats()
            .compartment("Port", 50, -50, 0)
            .compartment("Middle", 60, 0, 0)
            .box("A", "Port", 4)
            .sideTolerance(1.5);
    assertEquals(
        List.of("the tackle pulls to port with 200 kg·cm; the side tolerance set is 150 kg·cm"),
        said(port));
    assertTrue(
        port.plan().findings().stream()
            .anyMatch(
                finding ->
                    finding.code() == Code.SIDE_OVER_TOLERANCE
                        && finding.severity() == Severity.WARNING
                        && finding.at().equals(new Cell("Settings", 2, 2))),
        "a warning at the setting's cell");
    Boats starboard =
        new Boats()
            .compartment("Starboard", 50, 50, 0)
            .compartment("Middle", 60, 0, 0)
            .stock("Net", "", "Starboard", 1, 1)
            .box("A", "Starboard", 4)
            .sideTolerance(1.5);
    assertEquals(
        List.of(
            "the tackle pulls to starboard with 250 kg·cm; the side tolerance set is 150 kg·cm"),
        said(starboard));
  }

  @Test
  void weightsThatAreNotKnownAreCounted() {
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .box("A", "Stern", Optional.empty(), false, false)
            .box("B", "Stern", 2)
            .stock("Odds", "B", "Stern", 7, 0)
            .stock("Jigs", "", "Stern", 3, 0.1)
            .stock("Gone", "", "Stern", 0, 0);
    assertEquals(
        List.of("A has no empty weight"), said(boats), "pieces are told once for their style");
  }

  private static String conflict(Boats boats) {
    StowPlan plan = boats.plan();
    assertEquals(StowPlan.Outcome.REFUSED, plan.outcome());
    assertFalse(plan.boxes().stream().anyMatch(BoxPlan::moves));
    return plan.findings().stream()
        .filter(finding -> finding.code() == Code.NO_STOW_PLAN)
        .map(Finding::message)
        .reduce("", String::concat);
  }

  @Test
  void conflictOfLoads() {
    assertEquals(
        "no plan keeps every limit: in the closest plan Stern is 1.50 kg over its max load; there"
            + " is a plan without the max loads",
        conflict(
            new Boats()
                .compartment("Stern", 50, 0, 5)
                .stock("Net", "", "Stern", 1, 0.5)
                .box("A", "Stern", 6)));
  }

  @Test
  void conflictOfVolumes() {
    assertEquals(
        "no plan keeps every limit: in the closest plan Stern is 3.5 l over its usable volume;"
            + " there is a plan without the volumes",
        conflict(
            new Boats()
                .compartment("Stern", 50, 0, 0, 50, 20, 10)
                .box("A", "Stern", 1, 40, 10, 10)
                .box("B", "Stern", 1, 40, 10, 10)
                .box("C", "Stern", Optional.of(Boats.kg(1)), true, false, 40, 10, 10)));
  }

  /** The side tolerance alone is never in the way of a plan: the pull grows no worse. */
  @Test
  void aSideToleranceThatCannotBeKeptIsSaid() {
    Boats boats =
        new Boats()
            .compartment("Port stern", 50, -60, 0)
            .compartment("Port bow", 450, -60, 0)
            .box("A", "Port bow", 5);
    StowPlan usual = boats.plan();
    assertEquals(StowPlan.Outcome.MOVE, usual.outcome());
    assertEquals(
        "NOTE the tackle pulls to port with 300 kg·cm; the usual side tolerance is 70 kg·cm: no"
            + " plan was found that keeps to it: the stow plan pulls no more than now; set Side"
            + " tolerance to choose your own",
        side(usual, Code.SIDE_OVER_USUAL));
    StowPlan set = boats.sideTolerance(0.5).plan();
    assertEquals(StowPlan.Outcome.MOVE, set.outcome());
    assertEquals(
        "WARNING the tackle pulls to port with 300 kg·cm; the side tolerance set is 50 kg·cm: no"
            + " plan was found that keeps to it: the stow plan pulls no more than now",
        side(set, Code.SIDE_OVER_TOLERANCE));
    assertEquals(
        new Cell("Settings", 2, 2),
        set.findings().stream()
            .filter(finding -> finding.code() == Code.SIDE_OVER_TOLERANCE)
            .findFirst()
            .orElseThrow()
            .at());
  }

  private static String side(StowPlan plan, Code code) {
    return plan.findings().stream()
        .filter(finding -> finding.code() == code)
        .map(one -> one.severity() + " " + one.message() + ": " + one.done())
        .reduce("", String::concat);
  }

  /** A box that has to leave its place may pull, where nothing else is possible. */
  @Test
  void otherLimitsComeBeforeTheSideTolerance() {
    StowPlan plan =
        new Boats()
            .compartment("Middle", 50, 0, 2)
            .compartment("Starboard", 450, 60, 0)
            .box("A", "Middle", 5)
            .plan();
    assertEquals(StowPlan.Outcome.MOVE, plan.outcome());
    assertEquals(3, plan.recommended().sideMomentKgM(), 1e-9);
    assertTrue(side(plan, Code.SIDE_OVER_USUAL).contains("left out of the plan"));
  }

  @Test
  void conflictOfSeveralLimits() {
    assertEquals(
        "no plan keeps every limit: in the closest plan Port is 1.00 kg over its max load; Port is"
            + " 3.5 l over its usable volume; more than one kind of limit is in the way",
        conflict(
            new Boats()
                .compartment("Port", 50, -60, 5, 50, 20, 10)
                .box("A", "Port", 2, 40, 10, 10)
                .box("B", "Port", 2, 40, 10, 10)
                .box("C", "Port", 2, 40, 10, 10)
                .sideTolerance(0.5)));
  }

  @Test
  void eachLimitWhoseAbsenceWouldDoIsNamed() {
    // Aft there is room by volume but not by load, forward the reverse: either gives a plan.
    assertEquals(
        "; there is a plan without the max loads, or without the volumes",
        conflict(
                new Boats()
                    .compartment("Stern", 50, 0, 1, 50, 20, 10)
                    .compartment("Bow", 400, 0, 0, 50, 20, 5)
                    .box("A", "Bow", 2, 40, 14, 4)
                    .box("B", "Bow", 2, 40, 14, 4))
            .replaceFirst(".*over its [a-z ]+", ""));
  }
}
