package sparewell.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.load.LoadSheetTest.finding;
import static sparewell.load.LoadSheetTest.laden;
import static sparewell.load.LoadSheetTest.report;
import static sparewell.load.LoadSheetTest.row;
import static sparewell.load.LoadSheetTest.still;
import static sparewell.load.LoadSheetTest.value;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.season.Boat;
import sparewell.stow.Boats;

/** The plate's figures against what is aboard, as far as that is known. */
class PlateTest {
  private static List<Code> codes(LoadReport report) {
    return report.findings().stream().map(Finding::code).toList();
  }

  @Test
  void plateLineCountsPersonsMotorAndGearButNeverTheHull() {
    Boat boat =
        new Boat(
            Optional.of(Boats.kg(500)),
            Optional.of(Boats.kg(80)),
            true,
            Optional.empty(),
            Optional.empty());
    LoadReport outboard = report(laden().boat(boat));
    assertEquals(Boats.kg(200 + 90 + 50 + 40 + 10 + 20), value(outboard, "plate_load"));
    assertEquals(90.0, (Double) value(outboard, "plate_margin"), 1e-9);
    assertEquals(Boats.kg(90), value(outboard, "plate_persons_load"));
    assertEquals(-10.0, (Double) value(outboard, "plate_persons_margin"), 1e-9);
    assertTrue(codes(outboard).contains(Code.OVER_PLATE_PERSONS));
    assertFalse(codes(outboard).contains(Code.OVER_PLATE));
    Boat inboard =
        new Boat(
            Optional.of(Boats.kg(200)),
            Optional.empty(),
            false,
            Optional.empty(),
            Optional.empty());
    LoadReport over = report(laden().boat(inboard));
    assertEquals(Boats.kg(210), value(over, "plate_load"), "without the motor");
    assertTrue(codes(over).contains(Code.OVER_PLATE));
    assertEquals(null, value(over, "plate_persons_load"), "no plate figure: empty");
  }

  @Test
  void withoutAPlateFigureNothingIsChecked() {
    LoadReport report = report(laden());
    for (String quantity : List.of("plate_weight", "plate_load", "plate_margin")) {
      assertEquals(null, value(report, quantity));
    }
    assertEquals(List.of(Code.PLATE_NOT_CHECKED, Code.PLATE_NOT_CHECKED), codes(report));
    assertFalse(report.plateTotal().over());
  }

  @Test
  void aPlateWithoutListedPersonsOrMotorIsTooRosy() {
    Boat boat =
        new Boat(
            Optional.of(Boats.kg(500)), Optional.empty(), true, Optional.empty(), Optional.empty());
    Boats boats = new Boats().compartment("Stern", 50, 0, 0).box("A", "Stern", 2).boat(boat);
    assertEquals(
        2, codes(report(boats)).stream().filter(c -> c == Code.PLATE_WITHOUT_LOADS).count());
  }

  @Test
  void statusNamesWhatIsOverAndWhatIsNotChecked() {
    LoadReport report =
        report(
            new Boats()
                .compartment("Full", 50, 0, 5, 40, 30, 20)
                .compartment("Bare", 60, 0, 0)
                .compartment("Half", 70, 0, 1)
                .box("A", "Full", Optional.of(Boats.kg(6)), true, false, 39, 29, 19)
                .box("B", "Half", Optional.of(Boats.kg(3)), true, false));
    assertEquals("over load, over volume", row(report, "Full").status());
    assertEquals("not checked", row(report, "Bare").status());
    assertEquals("over load, not checked", row(report, "Half").status());
    assertTrue(row(report, "Bare").volumeUsedPercent().isEmpty());
  }

  private static Boat plate(double totalKg, double personsKg) {
    return new Boat(
        totalKg > 0 ? Optional.of(Boats.kg(totalKg)) : Optional.empty(),
        personsKg > 0 ? Optional.of(Boats.kg(personsKg)) : Optional.empty(),
        true,
        Optional.empty(),
        Optional.empty());
  }

  @Test
  void saysByHowMuchThePlateIsExceededAndWhetherThatIsAll() {
    LoadReport exact = report(still().boat(plate(410, 90)));
    assertFalse(codes(exact).contains(Code.OVER_PLATE), "as much as the plate says is not over");
    assertFalse(codes(exact).contains(Code.OVER_PLATE_PERSONS));
    Finding over = finding(report(still().boat(plate(400, 80))), Code.OVER_PLATE);
    assertEquals(
        "the load is 410.00 kg, 10.00 kg OVER the capacity plate's 400.00 kg", over.message());
    Finding persons = finding(report(still().boat(plate(400, 80))), Code.OVER_PLATE_PERSONS);
    assertEquals(
        "the persons weigh 90.00 kg, 10.00 kg OVER the capacity plate's 80.00 kg for persons",
        persons.message());
    Boats unknown =
        still().boat(plate(400, 80)).box("D", "Stern", Optional.empty(), true, false, 10, 10, 10);
    assertEquals(
        " at least", finding(report(unknown), Code.OVER_PLATE).details().get(0), "a box unweighed");
  }

  @Test
  void aPlateForPersonsAloneAsksForThePersonsOnly() {
    Boats boats = new Boats().compartment("Stern", 50, 0, 0).box("A", "Stern", 2);
    assertEquals(
        List.of(Code.PLATE_NOT_CHECKED, Code.PLATE_WITHOUT_LOADS),
        codes(report(boats.boat(plate(0, 80)))));
    assertEquals(List.of("person"), finding(report(boats), Code.PLATE_WITHOUT_LOADS).details());
  }

  @Test
  void exactlyAtALimitIsNotOver() {
    // The settings fill 0.85 of a compartment: 85 of 100 l, and 5 kg of 5 kg.
    LoadReport report =
        report(
            new Boats()
                .compartment("Full", 50, 0, 5, 100, 100, 10)
                .compartment("Over", 150, 0, 5, 100, 100, 10)
                .compartment("Heavy", 250, 0, 5, 100, 100, 10)
                .box("A", "Full", Optional.of(Boats.kg(5)), true, false, 100, 85, 10)
                .box("B", "Over", Optional.of(Boats.kg(4)), true, false, 100, 85.1, 10)
                .box("C", "Heavy", Optional.of(Boats.kg(5.001)), true, false, 100, 80, 10));
    assertEquals("ok", row(report, "Full").status());
    assertFalse(row(report, "Full").over());
    assertEquals("over volume", row(report, "Over").status());
    assertTrue(row(report, "Over").over());
    assertEquals("over load", row(report, "Heavy").status());
    assertTrue(row(report, "Heavy").over());
  }
}
