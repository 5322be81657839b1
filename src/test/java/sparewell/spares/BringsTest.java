package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.SparesPlannerTest.plan;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.season.Place;
import sparewell.season.SeasonMaker;

/** Pieces brought from ashore: how many, into which box, and the losses that they cover. */
class BringsTest {
  @Test
  void neededAtOnceUsesWhatIsAboardBeforeAnythingIsBrought() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Net")
            .atOnce(2, 1)
            .ashore("Net", "old", "Rack", 5)
            .aboard("Net", "new", "Locker", 2);
    SparesReport report = plan(maker, new KnownForecast());
    assertEquals(List.of(0, 2), report.rows().stream().map(SparesRow::floor).toList());
    assertTrue(report.brings().isEmpty());
  }

  @Test
  void bringsFromAshoreFirstAndBuysTheRestInWholePacks() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Jig")
            .pack(4, "5.50")
            .floor(12)
            .plain("Worm")
            .aboard("Jig", "black", "J1", 1)
            .aboard("Jig", "black", "J2", 2)
            .ashore("Jig", "black", "Tub", 1)
            .ashore("Jig", "black", "Shelf", 3)
            .ashore("Worm", "", "Tub", 4);
    SparesReport report = plan(maker, new KnownForecast().poisson("Worm", 0.05));
    SparesRow jig = report.rows().get(0);
    assertEquals(4, jig.bringAboard());
    assertEquals(2, jig.buyPacks(), "12 wanted, 7 after bringing, 4 in a pack");
    assertEquals(8, jig.buyPieces());
    assertEquals(Optional.of(new BigDecimal("11.00")), jig.cost());
    List<Bring> brings = report.brings();
    assertEquals("Worm", brings.get(0).item().style(), "saves most");
    assertEquals(Optional.of(new Place("J2", "Bow")), brings.get(0).to(), "to its family");
    assertFalse(brings.get(0).open());
    assertEquals(new Place("Shelf", "Garage"), brings.get(1).from());
    assertEquals(Optional.of(new Place("J2", "Bow")), brings.get(1).to());
    assertEquals(List.of(3, 1), brings.subList(1, 3).stream().map(Bring::pieces).toList());
  }

  @Test
  void bringsGoToTheItemsPlaceElseToItsStylesAndTakeNoMoreThanNeeded() {
    SeasonMaker maker =
        new SeasonMaker()
            .carryAtLeast(3)
            .plain("Worm", "Jig")
            .aboard("Worm", "", "W1", 9)
            .aboard("Jig", "blue", "J1", 4)
            .aboard("Jig", "green", "J2", 5)
            .aboard("Jig", "brown", "J3", 5)
            .aboard("Jig", "black", "J4", 1)
            .ashore("Jig", "black", "Shelf", 2)
            .ashore("Jig", "black", "Tub", 2)
            .ashore("Jig", "red", "Tub", 4);
    List<Bring> brings = plan(maker, new KnownForecast()).brings();
    assertEquals(
        List.of("black 2 Shelf J4", "red 3 Tub J2"),
        brings.stream()
            .map(
                bring ->
                    bring.item().colour()
                        + " "
                        + bring.pieces()
                        + " "
                        + bring.from().box()
                        + " "
                        + bring.to().orElseThrow().box())
            .toList());
  }

  /** R 4.2.2: loss table of Poisson(2), stock 1 and 3; ppois(4, 2, lower.tail = FALSE). */
  @Test
  void bringingSavesTheWeightedFallOfShortage() {
    SeasonMaker maker =
        new SeasonMaker()
            .chance(0.85, false)
            .style("Jig")
            .importance(2)
            .aboard("Jig", "", "J1", 1)
            .ashore("Jig", "", "Tub", 2);
    SparesReport report = plan(maker, new KnownForecast().poisson("Jig", 2.0 / 24));
    SparesRow row = report.rows().get(0);
    assertEquals(3, row.carry(), "ppois(3, 2) = 0.857");
    assertEquals(2 * (1.13533528 - 0.21801755), row.shortageSavedByBringing(), 1e-7);
    assertEquals(row.shortageSavedByBringing(), report.brings().get(0).shortageSavedPieces());
    // ppois(3, 2, lower.tail = FALSE), R 4.2.2
    assertEquals(0.1428765395, row.runOutAtCarryProbability(), 1e-9);
    assertEquals("loss rate", row.reason().words());
  }

  @Test
  void neededAtOnceGoesFirstWhereItCostsNothing() {
    // Two needed; the first item has none, the second one aboard, the third one ashore.
    SeasonMaker maker =
        new SeasonMaker()
            .style("Net")
            .atOnce(2, 1)
            .aboard("Net", "none", "L", 0)
            .ashore("Net", "home", "Rack", 1)
            .aboard("Net", "here", "L", 1);
    assertEquals(List.of(0, 1, 1), floors(maker));
    SeasonMaker bare =
        new SeasonMaker()
            .style("Net")
            .atOnce(3, 1)
            .aboard("Net", "a", "L", 0)
            .aboard("Net", "b", "L", 0);
    assertEquals(List.of(2, 1), floors(bare), "of equals the first");
    SeasonMaker both =
        new SeasonMaker()
            .style("Net")
            .atOnce(2, 1)
            .aboard("Net", "a", "L", 0)
            .aboard("Net", "b", "L", 1)
            .ashore("Net", "b", "Rack", 1);
    assertEquals(List.of(0, 2), floors(both), "what is aboard and ashore counts together");
  }

  private static List<Integer> floors(SeasonMaker maker) {
    return plan(maker, new KnownForecast()).rows().stream().map(SparesRow::floor).toList();
  }
}
