package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;
import sparewell.rates.Exposure;
import sparewell.rates.LossForecast;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;

/** Figures of a season plan, worked from losses that are plain Poisson counts. */
class SeasonPlanFiguresTest {
  private static final CountDistribution THREE = KnownForecast.poisson(3);

  private static SeasonPlan plan(SeasonMaker maker, LossForecast forecast) {
    Horizon next = HorizonPlanner.plan(maker.season(), maker.onHand(), forecast);
    List<SparesRow> rows = SparesPlanner.rows(maker.season(), maker.onHand(), forecast, next);
    return SeasonPlanner.plan(maker.season(), maker.onHand(), forecast, rows);
  }

  /** Three pieces an event of each of these styles. */
  private static KnownForecast three(String... styles) {
    KnownForecast forecast = new KnownForecast();
    for (String style : styles) {
      forecast.poisson(style, 0.3);
    }
    return forecast;
  }

  private static SeasonMaker two(double jigImportance, double wormImportance) {
    return new SeasonMaker()
        .style("Jig")
        .importance(jigImportance)
        .style("Worm")
        .importance(wormImportance)
        .aboard("Jig", "", "J1", 3)
        .ashore("Jig", "", "Tub", 2)
        .aboard("Worm", "", "W1", 4)
        .event("Cup", AS_OF.plusDays(20), 8, 1, line("Jig", 10), line("Worm", 10));
  }

  private static OptionalDouble lasts(SeasonMaker maker) {
    return plan(maker, three("Jig", "Worm")).stages().get(0).unboughtProbability();
  }

  @Test
  void theChanceIsThatOfTheImportantStylesAndOfLesserOnesWhereNoneIs() {
    double jig = THREE.atMost(5);
    double worm = THREE.atMost(4);
    assertEquals(jig * worm, lasts(two(1, 1)).getAsDouble(), 1e-12);
    assertEquals(jig, lasts(two(1, 0.9)).getAsDouble(), 1e-12);
    assertEquals(jig * worm, lasts(two(0.5, 0.9)).getAsDouble(), 1e-12);
    assertEquals(worm, lasts(two(0, 0.9)).getAsDouble(), 1e-12);
    assertEquals(OptionalDouble.empty(), lasts(two(0, 0)));
  }

  @Test
  void whatIsAsGoodAsSureToLastIsCertain() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .aboard("Jig", "", "J1", 40)
            .event("Cup", AS_OF.plusDays(20), 8, 1, line("Jig", 10));
    assertEquals(
        OptionalDouble.of(1), plan(maker, three("Jig")).stages().get(0).unboughtProbability());
  }

  @Test
  void linesCountWhatLiesAshoreAndNameADayOnlyWhereSomethingIsBought() {
    SeasonMaker maker = two(1, 1).plain("Net").aboard("Net", "", "N1", 9);
    maker.event("Final", AS_OF.plusDays(60), 8, 1, line("Net", 10));
    SeasonPlan plan = plan(maker, three("Jig", "Worm", "Net"));
    assertEquals(3, plan.lines().size(), "what an event does not use has no line");
    SeasonPlan.Line jig = plan.lines().get(0);
    assertEquals(5, jig.beforePieces());
    assertEquals(3, jig.expectedLossPieces(), 1e-9);
    assertEquals(THREE.above(5), jig.runOutProbability(), 1e-12);
    // qpois(0.95, 3) = 6, R 4.2.2: one more than five; nine nets are enough.
    assertEquals(Optional.of(AS_OF.plusDays(13)), jig.buyBy());
    assertEquals("Net", plan.lines().get(2).item().style());
    assertEquals(Optional.empty(), plan.lines().get(2).buyBy());
    assertFalse(plan.stages().get(0).together());
    assertFalse(plan.stages().get(1).together());
  }

  @Test
  void piecesAshoreAreAsGoodAsThoseAboard() {
    List<Integer> packs = null;
    for (int ashore = 0; ashore < 5; ashore++) {
      SeasonMaker maker =
          new SeasonMaker()
              .priced("Jig", 2, "5.00")
              .aboard("Jig", "", "J1", 4 - ashore)
              .ashore("Jig", "", "Tub", ashore)
              .event("Cup", AS_OF.plusDays(20), 8, 1, line("Jig", 10))
              .event("Final", AS_OF.plusDays(60), 8, 1, line("Jig", 10));
      SeasonPlan plan = plan(maker, three("Jig"));
      List<Integer> now = plan.stages().stream().map(SeasonPlan.Stage::packs).toList();
      packs = packs == null ? now : packs;
      assertEquals(packs, now, ashore + " ashore");
      assertTrue(now.get(1) > 0, now.toString());
    }
  }

  /** Floors come last of a day, and money is summed by month, packs without a price apart. */
  @Test
  void purchasesOfADayAndMoneyOfAMonth() {
    SeasonMaker maker =
        new SeasonMaker().style("Net").floor(2).priced("Jig", 2, "5.00").plain("Worm");
    for (String style : List.of("Net", "Jig", "Worm")) {
      maker.aboard(style, "", style, 0);
    }
    maker.event("Cup", AS_OF.plusDays(20), 8, 1, line("Jig", 10), line("Worm", 10));
    SeasonPlan plan = plan(maker, three("Jig", "Worm"));
    List<String> order = plan.purchases().stream().map(one -> one.item().style()).toList();
    assertEquals(List.of("Jig", "Worm", "Net"), order);
    assertEquals(List.of("Jig", "Worm"), styles(plan.forLosses()));
    assertEquals(List.of("Net"), styles(plan.forFloors()));
    // qpois(0.95, 3) = 6, R 4.2.2: three packs of two jigs, six worms, two nets
    assertEquals(
        List.of(new SeasonPlan.Month(YearMonth.of(2026, 5), 11, new BigDecimal("15.00"), 8)),
        plan.months());
    assertEquals(11, plan.stages().get(0).packs());
    assertEquals(
        List.of("Jig", "Worm"), plan.courses().stream().map(SeasonPlan.Course::style).toList());
    assertEquals(new BigDecimal("15.00"), plan.stages().get(0).cost());
  }

  private static List<String> styles(List<SeasonPlan.Purchase> purchases) {
    return purchases.stream().map(one -> one.item().style()).toList();
  }

  @Test
  void coursesAreOfTheFiveStylesThatRunDownFirst() {
    SeasonMaker maker = new SeasonMaker().plain("Unused", "A", "B", "C", "D", "E", "F");
    maker.aboard("Unused", "", "U", 1);
    int[] held = {30, 4, 12, 2, 20, 10};
    for (int i = 0; i < held.length; i++) {
      String style = "ABCDEF".substring(i, i + 1);
      maker.aboard(style, "red", style, held[i] / 2).aboard(style, "blue", style, held[i] / 2);
    }
    maker.event(
        "Cup",
        AS_OF.plusDays(20),
        8,
        2,
        "ABCDEF"
            .chars()
            .mapToObj(c -> line("" + (char) c, c == 'F' ? 30 : 10))
            .toArray(i -> lines(i)));
    SeasonPlan plan = plan(maker, three("A", "B", "C", "D", "E", "F"));
    assertEquals(
        List.of("D", "F", "B", "C", "E"),
        plan.courses().stream().map(SeasonPlan.Course::style).toList());
    assertEquals(
        List.of(
            new SeasonPlan.Point(AS_OF, 12, 12, 12),
            // mean 3; qpois(c(0.05, 0.95), 3) = 1 and 6, R 4.2.2
            new SeasonPlan.Point(
                AS_OF.plusDays(21), 12 - 3 + THREE.expectedShortage(12), 12 - 6, 12 - 1)),
        plan.courses().get(3).points());
    assertEquals(0, plan.courses().get(0).points().get(1).low90Pieces());
  }

  private static Event.PlanLine[] lines(int length) {
    return new Event.PlanLine[length];
  }

  /** Steps at which exposures of the last event of a season lie. */
  private static Set<Integer> steps(SeasonMaker maker) {
    Set<Integer> steps = new TreeSet<>();
    plan(
        maker,
        new LossForecast() {
          private final KnownForecast known = three("Jig");

          @Override
          public double meanShare(String style) {
            return known.meanShare(style);
          }

          @Override
          public boolean perHourAfloat() {
            return known.perHourAfloat();
          }

          @Override
          public CountDistribution styleLosses(String style, List<Exposure> exposures) {
            exposures.forEach(one -> steps.add(one.stepsAhead()));
            return known.styleLosses(style, exposures);
          }

          @Override
          public Map<ItemId, CountDistribution> itemLosses(String style, List<Exposure> exposures) {
            return known.itemLosses(style, exposures);
          }

          @Override
          public double[] lastsThroughout(List<StagedStock> stocks) {
            return known.lastsThroughout(stocks);
          }
        });
    return steps;
  }

  /** Rates walk on with each trip: as many a day as in the year before. */
  @Test
  void laterEventsLieAsManyTripsAheadAsTheLastYearHadInThatTime() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig")
            .aboard("Jig", "", "J1", 3)
            .event("Cup", AS_OF.plusDays(20), 8, 1, line("Jig", 10))
            .event("Final", AS_OF.plusDays(93), 8, 1, line("Jig", 10));
    assertEquals(Set.of(1, 2), steps(maker), "none logged: one trip each");
    for (int t = 0; t < 20; t++) {
      maker.trip("T" + t, AS_OF.minusDays(5 + 15L * t), 8, "Jig", 4);
    }
    maker.trip("old", AS_OF.minusYears(1), 8, "Jig", 4);
    // 20 trips a year, 73 days: a fifth of them
    assertEquals(Set.of(1, 5), steps(maker));
  }
}
