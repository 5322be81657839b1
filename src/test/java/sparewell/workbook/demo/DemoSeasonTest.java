package sparewell.workbook.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sparewell.units.UnitSystem;

class DemoSeasonTest {
  private static final DemoSeason SEASON = DemoSeason.standard();
  private static final Map<String, List<List<Object>>> ROWS = DemoRows.of(SEASON, UnitSystem.US);

  @Test
  void theSizesOfTheDemoAreThoseAskedFor() {
    assertEquals(30, ROWS.get("Styles").size());
    assertEquals(7, distinct("Styles", 1));
    Set<List<Object>> items = new HashSet<>();
    ROWS.get("Stock").forEach(row -> items.add(row.subList(0, 3)));
    assertEquals(220, items.size());
    assertEquals(26, ROWS.get("Boxes").size());
    assertEquals(8, ROWS.get("Compartments").size());
    assertEquals(
        1, ROWS.get("Compartments").stream().filter(row -> row.get(8).equals("yes")).count());
    assertEquals(40, ROWS.get("Trips").size());
    assertEquals(250, ROWS.get("Losses").size());
    assertEquals(6, ROWS.get("Events").size());
    assertEquals(4, distinct("Event plan", 0));
    assertTrue(ROWS.get("Restocks").size() >= 10);
    assertTrue(distinct("Style hours", 0) > 30, "style hours for most trips");
    assertTrue(distinct("Style hours", 0) < 40, "but not for all");
  }

  @Test
  void everyNameReferredToExists() {
    Set<Object> styles = column("Styles", 0);
    Set<Object> trips = column("Trips", 0);
    Set<Object> places = column("Boxes", 0);
    assertTrue(column("Compartments", 0).containsAll(column("Boxes", 1)));
    places.addAll(column("Compartments", 0));
    assertTrue(places.containsAll(column("Stock", 3)));
    assertTrue(places.containsAll(column("Restocks", 4)));
    for (String sheet : List.of("Stock", "Style hours", "Losses", "Restocks", "Event plan")) {
      assertTrue(styles.containsAll(column(sheet, sheet.equals("Stock") ? 0 : 1)), sheet);
    }
    assertTrue(trips.containsAll(column("Style hours", 0)));
    assertTrue(trips.containsAll(column("Losses", 0)));
    assertTrue(column("Events", 0).containsAll(column("Event plan", 0)));
  }

  @Test
  void theSeedDecidesAll() {
    assertEquals(ROWS, DemoRows.of(DemoSeason.of(DemoSeason.SEED), UnitSystem.US));
    assertNotEquals(ROWS.get("Losses"), DemoRows.of(DemoSeason.of(7), UnitSystem.US).get("Losses"));
  }

  @Test
  void bothUnitSystemsTellTheSameSeason() {
    Map<String, List<List<Object>>> metric = DemoRows.of(SEASON, UnitSystem.METRIC);
    ROWS.forEach((sheet, rows) -> assertEquals(rows.size(), metric.get(sheet).size(), sheet));
    Set<List<Object>> items = new HashSet<>();
    metric.get("Stock").forEach(row -> items.add(row.subList(0, 3)));
    assertEquals(220, items.size(), "sizes stay distinct when called in metric");
  }

  /**
   * Pearson's statistic of pieces wanted beside pieces expected at the true rates.
   *
   * <p>scipy.stats.chi2.ppf([0.001, 0.999], 26) gives 9.222, 54.052; the counts are over-dispersed
   * sums, so each is divided by its own variance.
   */
  @Test
  void theLossesAgreeWithTheTrueRates() {
    double statistic = 0;
    int thrown = 0;
    for (String style : DemoSeason.styles()) {
      double variance = SEASON.variancePieces(style);
      if (variance > 0) {
        double off = SEASON.wantedPieces(style) - SEASON.expectedPieces(style);
        statistic += off * off / variance;
        thrown++;
      }
    }
    assertEquals(26, thrown);
    assertTrue(statistic > 9.222 && statistic < 54.052, "statistic " + statistic);
  }

  /**
   * Over many seeds, pieces per expected piece is near one.
   *
   * <p>200 seasons of about 290 pieces with the simulator's own variance: the standard error of the
   * ratio is under 0.006, so 0.02 is more than three of them.
   */
  @Test
  void overManySeasonsTheRatesAreMet() {
    double expected = 0;
    double wanted = 0;
    for (int seed = 100; seed < 300; seed++) {
      DemoSeason season = DemoSeason.of(seed);
      for (String style : DemoSeason.styles()) {
        expected += season.expectedPieces(style);
        wanted += season.wantedPieces(style);
      }
    }
    assertEquals(1, wanted / expected, 0.02);
  }

  @Test
  void aTrueRateIsTheRateAtTheMixOfCoversLogged() {
    double hours = 0;
    double weighted = 0;
    for (DemoSeason.Outing outing : SEASON.outings()) {
      hours += outing.hours();
      weighted += outing.hours() * DemoSeason.COVER_MULTIPLIERS.get(outing.cover());
    }
    assertEquals(4.5 * weighted / hours, SEASON.trueRatePer10Hours("Football jig"), 1e-12);
    assertEquals(0, SEASON.trueRatePer10Hours("Casting rod"));
  }

  @Test
  void oneStyleIsIdleAndSomeRowsRanOut() {
    long recent =
        SEASON.outings().stream()
            .filter(outing -> outing.date().isAfter(DemoSeason.AS_OF.minusMonths(12)))
            .filter(outing -> outing.styleHours().containsKey(DemoTackle.style("Buzzbait")))
            .count();
    assertEquals(0, recent);
    assertTrue(SEASON.thrownHours("Buzzbait") > 0);
    assertTrue(SEASON.losses().stream().anyMatch(DemoSeason.LossRow::ranOut));
  }

  @Test
  void compartmentsAboardAreHalfToFourFifthsFullAndHoldTheirBoxes() {
    Map<String, Double> used = new HashMap<>();
    for (DemoBoat.Case box : DemoBoat.CASES) {
      used.merge(box.bay(), box.length() * box.width() * box.height(), Double::sum);
    }
    for (DemoBoat.Bay bay : DemoBoat.BAYS) {
      if (!bay.ashore() && !bay.name().equals(DemoBoat.ROD_LOCKER)) {
        double share = used.get(bay.name()) / (bay.length() * bay.width() * bay.height());
        assertTrue(share >= 0.5 && share <= 0.8, bay.name() + " " + share);
      }
    }
  }

  private static Set<Object> column(String sheet, int column) {
    Set<Object> values = new HashSet<>();
    ROWS.get(sheet).forEach(row -> values.add(row.get(column)));
    return values;
  }

  private static int distinct(String sheet, int column) {
    return column(sheet, column).size();
  }
}
