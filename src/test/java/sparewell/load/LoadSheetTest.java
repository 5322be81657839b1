package sparewell.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.load.LoadReport.SummaryRow;
import sparewell.season.Boat;
import sparewell.season.FixedLoad;
import sparewell.spares.IdleStyle;
import sparewell.stow.Boats;
import sparewell.stow.Moment;
import sparewell.stow.StowPlan;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

class LoadSheetTest {
  static LoadReport report(Boats boats) {
    StowPlan plan = boats.plan();
    return LoadSheet.of(boats.season(), boats.onHand(), plan);
  }

  static CompartmentLoad row(LoadReport report, String name) {
    return report.compartments().stream()
        .filter(row -> row.compartment().equals(name))
        .findFirst()
        .orElseThrow();
  }

  static Object value(LoadReport report, String quantity) {
    return report.summary().stream()
        .filter(row -> row.quantity().equals(quantity))
        .findFirst()
        .orElseThrow()
        .value()
        .orElse(null);
  }

  static Boats laden() {
    return new Boats()
        .compartment("Stern", 100, -40, 10, 100, 50, 40)
        .compartment("Bow", 400, 20, 30, 100, 50, 40)
        .compartment("Garage", 0, 0, 0, false, true)
        .box("A", "Stern", 6, 40, 25, 20)
        .box("B", "Bow", 9, 40, 25, 20)
        .box("C", "Garage", 50, 40, 25, 20)
        .stock("Jigs", "A", "Stern", 100, 0.02)
        .stock("Net", "", "Bow", 1, 3)
        .sideTolerance(20)
        .load("Hull", FixedLoad.Kind.HULL, 500, 200, 0)
        .load("Motor", FixedLoad.Kind.MOTOR, 200, -20, 0)
        .load("Angler", FixedLoad.Kind.PERSON, 90, 250, 30)
        .load("Battery", FixedLoad.Kind.BATTERY, 50, 50, 0)
        .load("Fuel", FixedLoad.Kind.FUEL, 40, 60, 0)
        .load("Anchor", FixedLoad.Kind.GEAR, 10, 450, 0);
  }

  @Test
  void leavingAnIdleStyleAshoreEqualsAFullRecomputation() {
    LoadReport report = report(laden());
    // The net: 3 kg at 4 m, 0.2 m to starboard. Left are 8 kg at 1 m and 9 kg at 4 m.
    IdleStyle net =
        new IdleStyle("Net", 1, Optional.empty(), Mass.of(3, MassUnit.KILOGRAM), 0, 12, 0.6);
    Moment rest = report.tackleWithout(List.of(net));
    assertEquals(17, rest.weightKg(), 1e-9);
    assertEquals((8 * 1.0 + 9 * 4.0) / 17, rest.centre().orElseThrow().in(LengthUnit.METRE), 1e-6);
    assertEquals(report.tackle(), report.tackleWithout(List.of()));
  }

  @Test
  void addsUpByCompartment() {
    LoadReport report = report(laden());
    assertEquals(2, report.compartments().size(), "storage ashore is left out");
    CompartmentLoad stern = row(report, "Stern");
    assertEquals(8_000_000, stern.weight().milligrams(), "6 kg and 100 jigs of 20 g");
    assertEquals(8 * 1.0, stern.moment().momentKgM(), 1e-9);
    assertEquals(8 * -0.4, stern.moment().sideMomentKgM(), 1e-9);
    assertEquals(40, stern.sharePercent().getAsDouble(), 1e-9);
    // 20 l of 200 l
    assertEquals(10, stern.volumeUsedPercent().getAsDouble(), 1e-9);
    assertEquals("ok", stern.status());
    CompartmentLoad bow = row(report, "Bow");
    assertEquals(12_000_000, bow.weight().milligrams(), "9 kg and the net");
    assertEquals(1, bow.boxes());
    assertEquals(
        report.tackle().weightKg(),
        report.compartments().stream().mapToDouble(r -> r.moment().weightKg()).sum(),
        1e-9);
    assertEquals(
        report.tackle().momentKgM(),
        report.compartments().stream().mapToDouble(r -> r.moment().momentKgM()).sum(),
        1e-9);
    assertEquals(
        report.tackle().sideMomentKgM(),
        report.compartments().stream().mapToDouble(r -> r.moment().sideMomentKgM()).sum(),
        1e-9);
  }

  @Test
  void summaryHasItsQuantitiesInOrder() {
    assertEquals(
        List.of(
            "tackle_weight",
            "tackle_centre_from_transom",
            "tackle_centre_from_centreline",
            "all_up_weight",
            "all_up_centre_from_transom",
            "all_up_centre_from_centreline",
            "plate_weight",
            "plate_load",
            "plate_margin",
            "plate_persons_weight",
            "plate_persons_load",
            "plate_persons_margin",
            "best_tackle_centre",
            "bow_change_per_plan",
            "heel_now_deg",
            "heel_with_plan_deg"),
        report(laden()).summary().stream().map(SummaryRow::quantity).toList());
  }

  @Test
  void allUpCountsEverythingAboard() {
    LoadReport report = report(laden());
    assertEquals(Boats.kg(910), value(report, "all_up_weight"));
    // 8 x 1 + 12 x 4 + 500 x 2 - 200 x 0.2 + 90 x 2.5 + 50 x 0.5 + 40 x 0.6 + 10 x 4.5 = 1335
    Length centre = (Length) value(report, "all_up_centre_from_transom");
    assertEquals(1335.0 / 910, centre.in(LengthUnit.METRE), 1e-6);
    Length side = (Length) value(report, "all_up_centre_from_centreline");
    assertEquals((-3.2 + 2.4 + 27) / 910, side.in(LengthUnit.METRE), 1e-6);
  }

  @Test
  void unknownWeightIsAtLeast() {
    LoadReport report =
        report(
            new Boats()
                .compartment("Stern", 50, 0, 5, 40, 30, 20)
                .box("A", "Stern", Optional.empty(), false, false, 10, 10, 10));
    assertFalse(report.tackleKnown());
    assertFalse(row(report, "Stern").weightKnown());
    assertEquals("not checked", row(report, "Stern").status(), "its true weight may be over");
    assertFalse(report.plateTotal().weightKnown());
  }

  @Test
  void movingShiftsTheCentreAndLeavingAshoreTakesTheWeightOff() {
    Boat boat =
        new Boat(
            Optional.of(Boats.kg(300)),
            Optional.empty(),
            false,
            Optional.of(new Boat.TrimTest(Boats.kg(80), Boats.cm(200), Boats.cm(4))),
            Optional.empty());
    Boats boats =
        new Boats()
            .compartment("Stern", 100, 0, 0)
            .compartment("Bow", 400, 0, 0)
            .box("A", "Bow", 20)
            .load("Angler", FixedLoad.Kind.PERSON, 80, 200, 0)
            .boat(boat);
    LoadReport report = report(boats);
    assertEquals(20, report.movedKg(), 1e-9);
    // 20 kg x 4 m + 80 kg x 2 m = 240 kg m over 100 kg; then 20 kg 3 m aft; then without the box.
    assertEquals(2.4, report.now().allUp().centre().get().in(LengthUnit.METRE), 1e-6);
    assertEquals(1.8, report.planned().allUp().centre().get().in(LengthUnit.METRE), 1e-6);
    assertEquals(2.0, report.ashore().get().allUp().centre().get().in(LengthUnit.METRE), 1e-6);
    assertEquals(200.0, report.planned().plateMarginKg().get(), 1e-9);
    assertEquals(220.0, report.ashore().get().plateMarginKg().get(), 1e-9);
    // 60 kg m against the test's 160 kg m for 4 cm
    assertEquals(1.5, report.planned().bowRise().get().in(LengthUnit.CENTIMETRE), 1e-4);
    assertEquals(report.planned().bowRise().get(), value(report, "bow_change_per_plan"));
    assertEquals(null, value(report, "heel_now_deg"), "no heel test, no figure");
  }

  @Test
  void drawsEveryCompartmentAboard() {
    LoadReport report = report(laden());
    BoatPlan plan = report.boatPlan().orElseThrow();
    assertEquals(2, report.compartments().size());
    assertEquals(
        100,
        report.compartments().stream().mapToDouble(row -> row.sharePercent().orElseThrow()).sum(),
        1e-7);
    assertEquals(
        (8 * 1.0 + 12 * 4.0) / 20,
        plan.centreNow().orElseThrow().fromTransom().in(LengthUnit.METRE),
        1e-6);
  }

  @Test
  void drawsTheWayOfTheMovesWithTheirSteps() {
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Bow", 450, 20, 0)
            .box("A", "Bow", 8)
            .box("B", "Bow", 6)
            .box("C", "Stern", 1);
    LoadReport report = report(boats);
    BoatPlan.Point bow = new BoatPlan.Point(Boats.cm(450), Boats.cm(20));
    BoatPlan.Point stern = new BoatPlan.Point(Boats.cm(50), Boats.cm(0));
    assertEquals(
        List.of(
            new BoatPlan.Way(
                bow, stern, List.of(new BoatPlan.Moved(1, "A"), new BoatPlan.Moved(2, "B")))),
        report.boatPlan().orElseThrow().ways());
    assertEquals(Boats.kg(15), row(report, "Stern").plannedWeight());
    assertEquals(Boats.kg(0), row(report, "Bow").plannedWeight());
  }

  @Test
  void heelsAsTheTestSaysUnlessAPositionLiesOutsideAnyBoat() {
    Boat.HeelTest test = new Boat.HeelTest(Boats.kg(80), Boats.cm(50), 3); // 40 kg m
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 20, 0)
            .box("A", "Stern", Optional.of(Boats.kg(40)), true, false)
            .boat(
                new Boat(
                    Optional.empty(), Optional.empty(), true, Optional.empty(), Optional.of(test)));
    double degrees = Math.toDegrees(Math.atan(0.2 * Math.tan(Math.toRadians(3))));
    assertEquals(degrees, (double) value(report(boats), "heel_now_deg"), 1e-9);
    boats.load("Cooler", FixedLoad.Kind.GEAR, 10, 45_000, 0);
    assertEquals(null, value(report(boats), "heel_now_deg"));
  }

  static Finding finding(LoadReport report, Code code) {
    return report.findings().stream().filter(f -> f.code() == code).findFirst().orElseThrow();
  }

  /** Motor 200, angler 90, gear 100, tackle 20 that stays put: 410 kg. */
  static Boats still() {
    return new Boats()
        .compartment("Stern", 100, 0, 0)
        .box("A", "Stern", Optional.of(Boats.kg(20)), true, false)
        .load("Motor", FixedLoad.Kind.MOTOR, 200, -20, 0)
        .load("Angler", FixedLoad.Kind.PERSON, 90, 250, 30)
        .load("Anchor", FixedLoad.Kind.GEAR, 100, 450, 0);
  }

  @Test
  void testsThatCannotBeUsedAreNamed() {
    Boat.TrimTest trim = new Boat.TrimTest(Boats.kg(80), Boats.cm(200), Boats.cm(4));
    Boat.TrimTest still = new Boat.TrimTest(Boats.kg(80), Boats.cm(200), Boats.cm(0));
    Boat.HeelTest heel = new Boat.HeelTest(Boats.kg(80), Boats.cm(50), 3);
    Boat.HeelTest steep = new Boat.HeelTest(Boats.kg(80), Boats.cm(50), 15);
    assertEquals(List.of(), unusable(trim, heel));
    assertEquals(List.of("trim"), unusable(still, heel));
    assertEquals(List.of("heel"), unusable(trim, steep));
    assertEquals(List.of("trim", "heel"), unusable(still, steep));
  }

  private static List<Object> unusable(Boat.TrimTest trim, Boat.HeelTest heel) {
    Boat boat =
        new Boat(Optional.empty(), Optional.empty(), true, Optional.of(trim), Optional.of(heel));
    return report(new Boats().compartment("Stern", 50, 0, 0).boat(boat)).findings().stream()
        .filter(finding -> finding.code() == Code.TEST_NOT_USABLE)
        .map(finding -> finding.details().get(0))
        .toList();
  }

  @Test
  void looseStockOfUnknownWeightMakesAllOfItAtLeast() {
    LoadReport report =
        report(
            new Boats()
                .compartment("Stern", 50, 0, 5, 40, 30, 20)
                .compartment("Bow", 350, 0, 5, 40, 30, 20)
                .box("A", "Bow", Optional.of(Boats.kg(1)), true, false, 10, 10, 10)
                .stock("Net", "", "Stern", 1, 0)
                .stock("Rod", "", "Bow", 1, 0.5));
    assertFalse(report.tackleKnown());
    assertFalse(row(report, "Stern").weightKnown());
    assertEquals("not checked", row(report, "Stern").status());
    assertTrue(row(report, "Bow").weightKnown());
    assertEquals("ok", row(report, "Bow").status());
  }

  @Test
  void oneBoxOfUnknownWeightOrSizeLeavesItsCompartmentUnchecked() {
    LoadReport report =
        report(
            new Boats()
                .compartment("Stern", 50, 0, 9, 100, 100, 100)
                .compartment("Bow", 350, 0, 9, 100, 100, 100)
                .box("A", "Stern", Optional.empty(), true, false, 10, 10, 10)
                .box("B", "Stern", Optional.of(Boats.kg(1)), true, false, 10, 10, 10)
                .box("C", "Bow", Optional.of(Boats.kg(1)), true, false)
                .box("D", "Bow", Optional.of(Boats.kg(1)), true, false, 10, 10, 10));
    assertFalse(row(report, "Stern").weightKnown());
    assertEquals("not checked", row(report, "Stern").status());
    assertTrue(row(report, "Bow").weightKnown());
    assertEquals("not checked", row(report, "Bow").status());
    assertFalse(row(report, "Bow").over());
  }

  @Test
  void anEmptyBoatHasNoSharesAndNoCentre() {
    LoadReport report = report(new Boats().compartment("Stern", 50, 0, 5, 40, 30, 20));
    assertTrue(row(report, "Stern").sharePercent().isEmpty());
    assertEquals(Optional.empty(), report.tackle().centre());
    assertEquals(Optional.empty(), report.tackle().sideCentre());
    assertEquals(Optional.empty(), report.boatPlan().orElseThrow().centreNow());
    assertEquals(Optional.empty(), report.ashore());
  }

  @Test
  void drawsCompartmentsToScaleWhereTheirSizeIsGiven() {
    LoadReport report = report(laden().compartment("Bare", 250, 0, 0));
    CompartmentLoad stern = report.compartments().get(0);
    assertEquals(Boats.cm(100), stern.size().orElseThrow().length());
    assertEquals(Boats.cm(50), stern.size().orElseThrow().width());
    assertEquals(Boats.cm(-40), stern.centre().fromCentreline());
    assertEquals(40, stern.sharePercent().orElseThrow(), 1e-7);
    assertEquals(Optional.empty(), report.compartments().get(1).size());
  }

  @Test
  void partsTakenOffTakeTheirSideMomentAlong() {
    Moment both = new Moment(5, 7, 3);
    assertEquals(new Moment(3, 4, 5), both.minus(new Moment(2, 3, -2)));
  }
}
