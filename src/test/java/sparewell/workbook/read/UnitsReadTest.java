package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.finding.Code;
import sparewell.season.FixedLoad;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.units.LengthUnit;
import sparewell.units.MassUnit;
import sparewell.workbook.Books;

class UnitsReadTest {
  // NIST SP 811 (2008), appendix B.8: 1 oz (avoirdupois) = 28.34952 g, 1 lb = 453.59237 g exactly
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "us|Weight each|0.5|14.17476",
        "metric|Weight each|14|14",
        "us|Weight each (g)|14|14",
        "metric|Weight each (oz)|0.5|14.17476",
        "us|WEIGHT EACH [LB]|0.5|226.796185",
        "us|weight each (kg)|0.02|20",
        "us|Weight each, g|14|14",
        "us|Weight each (lbs.)|1|453.59237",
        "us|Weight each (g)|'3/8 oz|10.63107",
        "metric|Weight each|'3/8 oz|10.63107",
        "us|Weight each|'1 1/2|42.52428",
        "us|Weight each|'1 lb 4 oz|566.9904",
        "us|Weight each|'  3/8 oz. |10.63107"
      })
  void weightsTakeTheUnitOfCellThenHeaderThenSetting(
      String units, String header, String cell, double grams) {
    Season season =
        Reading.of(
                Books.season()
                    .with("Settings", "Setting|Value\nUnits|" + units)
                    .with(
                        "Styles",
                        "Style|Family|" + header + "\nCrank|Hard|" + cell + "\nWorm|Soft"))
            .season();
    Style crank = season.styles().get(0);
    assertEquals(grams, crank.weightEach().orElseThrow().in(MassUnit.GRAM), 0.0006);
  }

  // NIST SP 811 (2008), appendix B.8: 1 in = 2.54 cm, 1 ft = 30.48 cm, both exactly
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "us|From transom|100|254",
        "metric|From transom|100|100",
        "us|From transom (cm)|100|100",
        "metric|From transom (in)|100|254",
        "us|From transom (ft)|10|304.8",
        "us|From transom (m)|2.5|250",
        "us|From transom (mm)|2500|250",
        "us|From Transom [CM]|100|100",
        "us|From transom|'5 ft 3 in|160.02",
        "us|From transom|'5' 3\"|160.02",
        "us|From transom|'-10|-25.4",
        "us|From transom|'6 1/2|16.51"
      })
  void positionsTakeTheUnitOfCellThenHeaderThenSetting(
      String units, String header, String cell, double centimetres) {
    Season season =
        Reading.of(
                Books.season()
                    .with("Settings", "Setting|Value\nUnits|" + units)
                    .with("Compartments", "Compartment|" + header + "\nBow|" + cell + "\nShelf|0"))
            .season();
    assertEquals(
        centimetres, season.compartments().get(0).fromTransom().in(LengthUnit.CENTIMETRE), 1e-4);
  }

  @Test
  void boxesAndLoadsAreInPoundsOrKilograms() {
    Books books =
        Books.season()
            .with("Loads", "Load|Weight|From transom|From centreline|Kind\nMotor|450|-12|0|motor");
    FixedLoad us = Reading.of(books).season().loads().get(0);
    assertEquals(450, us.weight().in(MassUnit.POUND), 2e-6);
    assertEquals(-12, us.fromTransom().in(LengthUnit.INCH), 2e-6);
    assertEquals(FixedLoad.Kind.MOTOR, us.kind());
    Season metric = Reading.of(books.with("Settings", "Setting|Value\nUnits|Metric")).season();
    assertEquals(450, metric.loads().get(0).weight().in(MassUnit.KILOGRAM), 2e-6);
    assertEquals(
        1.5, metric.boxes().get(0).emptyWeight().orElseThrow().in(MassUnit.KILOGRAM), 2e-6);
  }

  @Test
  void anotherUnitInTheCellIsUsedWithAWarning() {
    Reading reading =
        Reading.with(
            "Styles",
            "Style|Family|Weight each (g)|Counted in|Pieces per pack\nCrank|Hard|3/8 oz\nWorm|Soft|7|packs|10");
    assertEquals(List.of("warning Styles C2 UNIT_IN_CELL"), reading.lines());
  }

  @Test
  void anUnknownUnitIsSaid() {
    Reading header =
        Reading.with(
            "Styles",
            "Style|Family|Weight each (stone)|Counted in|Pieces per pack\nCrank|Hard|1\nWorm|Soft|7|packs|10");
    assertEquals(List.of("warning Styles C1 HEADER_UNIT"), header.lines());
    assertEquals("read in oz", header.findings().get(0).done());
    Reading cell =
        Reading.with(
            "Styles",
            "Style|Family|Weight each|Counted in|Pieces per pack\nCrank|Hard|1 stone\nWorm|Soft|7|packs|10");
    assertEquals(List.of("error Styles C2 UNKNOWN_UNIT"), cell.lines());
    assertTrue(cell.season().styles().get(0).weightEach().isEmpty());
  }

  @Test
  void theSideToleranceIsAMoment() {
    // NIST SP 811 (2008), appendix B.8: 1 lb = 0.45359237 kg, 1 in = 0.0254 m, both exactly
    double us = 100 * 0.45359237 * 0.0254;
    assertEquals(us, tolerance("us", "Side tolerance|100"), 1e-9);
    assertEquals(us, tolerance("metric", "Side tolerance (lb\u00b7in)|100"), 1e-9);
    assertEquals(us, tolerance("metric", "Side tolerance|'100 lb in"), 1e-9);
    assertEquals(1, tolerance("metric", "Side tolerance|100"), 1e-9);
    assertEquals(1, tolerance("us", "Side tolerance (kg\u00b7cm)|100"), 1e-9);
    assertEquals(1, tolerance("us", "Side tolerance [kg m]|1"), 1e-9);
  }

  private static double tolerance(String units, String row) {
    return Reading.with("Settings", "Setting|Value\nUnits|" + units + "\n" + row)
        .season()
        .settings()
        .sideTolerance()
        .orElseThrow()
        .kgM();
  }

  @Test
  void unitsFollowBoatItemsToo() {
    Season season =
        Reading.with(
                "Boat",
                "Item|Value\nPlate weight (kg)|700\nplate persons weight|800\n"
                    + "Trim test weight|180\nTrim test distance (m)|2\n"
                    + "Trim test bow change (cm)|3\nHeel test weight|180\n"
                    + "Heel test distance|40\nHeel test angle|2.5")
            .season();
    assertEquals(700, season.boat().plateWeight().orElseThrow().in(MassUnit.KILOGRAM), 2e-6);
    assertEquals(800, season.boat().platePersonsWeight().orElseThrow().in(MassUnit.POUND), 2e-6);
    assertEquals(2, season.boat().trimTest().orElseThrow().distance().in(LengthUnit.METRE), 1e-9);
    assertEquals(2.5, season.boat().heelTest().orElseThrow().angleDegrees());
    assertTrue(season.boat().plateIncludesMotor());
  }

  @Test
  void aTestThatLacksAFigureIsNotUsed() {
    Reading reading =
        Reading.with("Boat", "Item|Value\nTrim test weight|180\nPlate includes motor|no");
    assertTrue(reading.season().boat().trimTest().isEmpty());
    assertTrue(!reading.season().boat().plateIncludesMotor());
    assertEquals(
        "the trim test lacks distance and bow change; fill it in on the sheet Boat",
        reading.only(Code.TEST_INCOMPLETE).message());
  }
}
