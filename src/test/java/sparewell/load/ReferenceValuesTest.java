package sparewell.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.season.Boat;
import sparewell.stow.Boats;
import sparewell.stow.Moment;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/** The load sheet's arithmetic against published examples. */
class ReferenceValuesTest {
  private static final double KG_PER_LB = 0.45359237;
  private static final Length NO_WAY = Length.ZERO;

  private static Length inches(double amount) {
    return Length.of(amount, LengthUnit.INCH);
  }

  private static double centreInches(Moment moment) {
    return moment.centre().orElseThrow().in(LengthUnit.INCH);
  }

  @Test
  void weightShiftedAsInThePilotsHandbook() {
    // FAA-H-8083-25, Pilot's Handbook of Aeronautical Knowledge, weight and balance, 'weight
    // shifting': 8,000 lb, moment 616,000 lb in; 100 lb from station 30 to 150: 628,000, centre
    // 78.5
    Moment before = Moment.of(8000 * KG_PER_LB, inches(77), NO_WAY);
    assertEquals(616_000, before.momentKgM() / (KG_PER_LB * 0.0254), 1e-3);
    Moment after =
        before
            .minus(Moment.of(100 * KG_PER_LB, inches(30), NO_WAY))
            .plus(Moment.of(100 * KG_PER_LB, inches(150), NO_WAY));
    assertEquals(628_000, after.momentKgM() / (KG_PER_LB * 0.0254), 1e-3);
    assertEquals(78.5, centreInches(after), 1e-4);
  }

  @Test
  void mostWeightThatMayBeAddedAsInTheWrittenTest() {
    // FAA written-test item: 2,900 lb, centre 115.0, aft limit 116.0; at station 130 at most 207 lb
    // (2,900 / 14 = 207.1) may be added: 207 keeps the limit, 208 does not.
    Moment before = Moment.of(2900 * KG_PER_LB, inches(115), NO_WAY);
    assertTrue(centreInches(before.plus(Moment.of(207 * KG_PER_LB, inches(130), NO_WAY))) <= 116.0);
    assertTrue(centreInches(before.plus(Moment.of(208 * KG_PER_LB, inches(130), NO_WAY))) > 116.0);
    Moment exact = before.plus(Moment.of(2900.0 / 14 * KG_PER_LB, inches(130), NO_WAY));
    assertEquals(116.0, centreInches(exact), 1e-4);
  }

  // Arithmetic of the same formulas, derived and not quoted from print: weight, centre, part added
  // (negative: taken off), its station, new centre.
  @ParameterizedTest
  @CsvSource({"6860, 80.0, 140, 150, 81.4", "6100, 78.0, -100, 150, 76.8"})
  void addedAndTakenOff(double weight, double centre, double part, double station, double result) {
    Moment before = Moment.of(weight * KG_PER_LB, inches(centre), NO_WAY);
    Moment piece = Moment.of(Math.abs(part) * KG_PER_LB, inches(station), NO_WAY);
    assertEquals(result, centreInches(part > 0 ? before.plus(piece) : before.minus(piece)), 1e-4);
  }

  @Test
  void shiftByFormulaEqualsFullRecomputation() {
    Moment rest =
        Moment.of(300, Boats.cm(210), Boats.cm(5)).plus(Moment.of(12, Boats.cm(80), Boats.cm(-60)));
    Moment box = Moment.of(7.5, Boats.cm(430), Boats.cm(-20));
    Moment moved = Moment.of(7.5, Boats.cm(95), Boats.cm(55));
    Moment formula = rest.plus(box).plus(new Moment(0, 7.5 * (0.95 - 4.30), 7.5 * 0.75));
    Moment recomputed = rest.plus(moved);
    assertEquals(recomputed.weightKg(), formula.weightKg(), 1e-12);
    assertEquals(recomputed.momentKgM(), formula.momentKgM(), 1e-9);
    assertEquals(recomputed.sideMomentKgM(), formula.sideMomentKgM(), 1e-9);
    // and the centre moves by w d / W
    double shift =
        formula.centre().get().in(LengthUnit.METRE)
            - rest.plus(box).centre().get().in(LengthUnit.METRE);
    assertEquals(7.5 * -3.35 / 319.5, shift, 1e-6);
  }

  // Box barges, derived from box-shaped hydrostatics (KB = T/2, BM = B^2/12T, BML = L^2/12T, MCTC =
  // D
  // GML / 100 L, tan heel = w y / D GM): A of 100 x 20 x 5 m in sea water, B of 6 x 2 x 0.1 m in
  // fresh water. The test a careful angler would see on such a boat comes from its MCTC and GM; the
  // figure for another move must then be that of the barge.
  @ParameterizedTest
  @CsvSource({
    "167.2458, 10250, 3.1667, 50000, 40, 11.958, 50000, 4, 0.3530",
    "0.0591, 1.2, 2.8833, 20, 3.6, 1.218, 20, 0.5, 0.1656"
  })
  void boxBarges(
      double tonneMetresPerCm,
      double tonnes,
      double metacentric,
      double kg,
      double metres,
      double trimCm,
      double sideKg,
      double sideMetres,
      double heelDegrees) {
    double testKg = kg / 2;
    double testMetres = 1;
    // The whole change of trim as seen between the ends; the test is read the same way.
    Length seen = Boats.cm(testKg * 1e-3 * testMetres / tonneMetresPerCm);
    Boat.TrimTest trim = new Boat.TrimTest(Boats.kg(testKg), Boats.cm(100 * testMetres), seen);
    Length change = OwnTests.bowRise(Optional.of(trim), kg * metres).orElseThrow();
    assertEquals(trimCm, change.in(LengthUnit.CENTIMETRE), trimCm * 2e-3);
    double angle = Math.toDegrees(Math.atan(sideKg * 2e-3 / (tonnes * metacentric)));
    Boat.HeelTest heel = new Boat.HeelTest(Boats.kg(sideKg), Boats.cm(200), angle);
    double degrees = OwnTests.heelDegrees(Optional.of(heel), sideKg * sideMetres).orElseThrow();
    assertEquals(heelDegrees, degrees, 5e-5);
  }

  @Test
  void trimCaseFromSeamanshipTextbook() {
    // Nicholls's Seamanship and Nautical Knowledge, p. 527: moment to change trim one inch 480
    // ft-tons, 40 tons moved 36 ft aft: moment 1,440, change of trim 3 in, half of it at the bow.
    double kgPerTon = 2240 * KG_PER_LB;
    Boat.TrimTest test =
        new Boat.TrimTest(
            Mass.of(20 * kgPerTon, MassUnit.KILOGRAM), Length.of(24, LengthUnit.FOOT), inches(0.5));
    double moved = 40 * kgPerTon * 36 * 0.3048;
    Length bow = OwnTests.bowRise(Optional.of(test), moved).orElseThrow();
    assertEquals(1.5, bow.in(LengthUnit.INCH), 1e-4);
  }

  @Test
  void withoutAUsableTestThereIsNoFigure() {
    assertTrue(OwnTests.bowRise(Optional.empty(), 10).isEmpty());
    assertTrue(OwnTests.heelDegrees(Optional.empty(), 10).isEmpty());
    Boat.TrimTest nothing = new Boat.TrimTest(Boats.kg(0), Boats.cm(100), Boats.cm(2));
    assertTrue(OwnTests.bowRise(Optional.of(nothing), 10).isEmpty());
    Boat.HeelTest steep = new Boat.HeelTest(Boats.kg(80), Boats.cm(100), 40);
    assertTrue(OwnTests.heelDegrees(Optional.of(steep), 10).isEmpty());
  }

  @Test
  void weightGoingForwardLowersTheBowAndPortHeelsToPort() {
    Boat.TrimTest trim = new Boat.TrimTest(Boats.kg(80), Boats.cm(200), Boats.cm(4));
    assertEquals(
        -2, OwnTests.bowRise(Optional.of(trim), -80).get().in(LengthUnit.CENTIMETRE), 1e-4);
    Boat.HeelTest heel = new Boat.HeelTest(Boats.kg(80), Boats.cm(50), 3);
    assertEquals(-3, OwnTests.heelDegrees(Optional.of(heel), -40).get(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({
    "80, 100, 3, true",
    "80, -100, 3, true",
    "80, 100, -3, true",
    "80, 100, 14.9, true",
    "0, 100, 3, false",
    "80, 0, 3, false",
    "80, 100, 0, false",
    "80, 100, 15, false",
    "80, 100, -15, false"
  })
  void aTestNeedsAWeightAWayAndASmallChange(double kg, double cm, double change, boolean usable) {
    assertEquals(usable, OwnTests.usable(new Boat.HeelTest(Boats.kg(kg), Boats.cm(cm), change)));
    // A trim test is read in cm; 15 of them are no harm.
    assertEquals(
        usable || Math.abs(change) == 15,
        OwnTests.usable(new Boat.TrimTest(Boats.kg(kg), Boats.cm(cm), Boats.cm(change))));
  }
}
