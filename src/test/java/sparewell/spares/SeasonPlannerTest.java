package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;
import sparewell.rates.Exposure;
import sparewell.rates.LossForecast;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;

/** Season plans against closed forms of one rate that all events share. */
class SeasonPlannerTest {
  private static final double SHAPE = 2;
  private static final double RATE_HOURS = 40;

  /** One style, one item, gamma-Poisson: losses at several events share one unknown rate. */
  private static final class SharedRate implements LossForecast {
    @Override
    public double meanShare(String style) {
      return 1;
    }

    @Override
    public boolean perHourAfloat() {
      return false;
    }

    /** Negative binomial with size a and mean a h / b: the sum of negative multinomial counts. */
    @Override
    public CountDistribution styleLosses(String style, List<Exposure> exposures) {
      double hours = exposures.stream().mapToDouble(Exposure::hours).sum();
      return hours == 0
          ? CountDistribution.none()
          : KnownForecast.negBin(SHAPE * hours / RATE_HOURS, SHAPE);
    }

    @Override
    public Map<ItemId, CountDistribution> itemLosses(String style, List<Exposure> exposures) {
      Map<ItemId, CountDistribution> losses = new LinkedHashMap<>();
      exposures.forEach(
          one -> one.among().forEach(item -> losses.put(item, styleLosses(style, exposures))));
      return losses;
    }

    @Override
    public double[] lastsThroughout(List<StagedStock> stocks) {
      double[] chances = new double[stocks.get(0).stages().size()];
      for (int i = 0; i < 200; i++) {
        double rate =
            new GammaDistribution(SHAPE, 1 / RATE_HOURS)
                .inverseCumulativeProbability((i + 0.5) / 200);
        double[] running = {1};
        for (int k = 0; k < chances.length; k++) {
          LossForecast.Stage stage = stocks.get(0).stages().get(k);
          double hours = stage.exposures().stream().mapToDouble(Exposure::hours).sum();
          int most = stage.pieces().values().iterator().next();
          double[] next = new double[most + 1];
          PoissonDistribution here = new PoissonDistribution(rate * hours);
          double[] lost = IntStream.rangeClosed(0, most).mapToDouble(here::probability).toArray();
          for (int n = 0; n <= most; n++) {
            for (int before = 0; before <= Math.min(n, running.length - 1); before++) {
              next[n] += running[before] * lost[n - before];
            }
            chances[k] += next[n] / 200;
          }
          running = next;
        }
      }
      return chances;
    }
  }

  private static SeasonPlan plan(SeasonMaker maker, LossForecast forecast) {
    return SeasonPlanner.plan(maker.season(), maker.onHand(), forecast, rows(maker, forecast));
  }

  private static List<SparesRow> rows(SeasonMaker maker, LossForecast forecast) {
    Horizon next = HorizonPlanner.plan(maker.season(), maker.onHand(), forecast);
    return SparesPlanner.rows(maker.season(), maker.onHand(), forecast, next);
  }

  /** Losses ask for jigs, and a floor alone for nets. */
  @Test
  void withOneEventAheadItAsksForWhatTheSparesAskFor() {
    int floors = 0;
    for (int held = 0; held < 8; held++) {
      for (double hours : new double[] {2, 20, 30, 60}) {
        SeasonMaker maker =
            new SeasonMaker().priced("Jig", 2, "5.00").aboard("Jig", "", "J1", held);
        maker.style("Net").floor(2).aboard("Net", "", "N1", Math.min(2, held));
        maker.event("Cup", AS_OF.plusDays(20), 8, 1, line("Jig", hours));
        List<SparesRow> rows = rows(maker, new SharedRate());
        SeasonPlan plan = plan(maker, new SharedRate());
        assertEquals(
            rows.stream().mapToInt(SparesRow::buyPacks).sum(),
            plan.purchases().stream().mapToInt(SeasonPlan.Purchase::packs).sum());
        assertEquals(rows.get(0).runOutNowProbability(), plan.lines().get(0).runOutProbability());
        for (SeasonPlan.Purchase one : plan.purchases()) {
          assertEquals(one.item().style().equals("Net"), one.onlyFloor(), one.toString());
          floors += one.floorPacks();
          assertEquals(0, one.laterPacks(), "no event after it");
        }
      }
    }
    assertEquals(4 * (2 + 1), floors, "nets are bought where none or one is held");
  }

  private static SeasonMaker season(int pieces) {
    SeasonMaker maker = new SeasonMaker().priced("Jig", 2, "5.00").aboard("Jig", "", "J1", pieces);
    int[] days = {10, 11, 40, 70};
    double[] hours = {20, 10, 30, 24};
    for (int k = 0; k < days.length; k++) {
      maker.event("E" + k, AS_OF.plusDays(days[k]), 8, 1, line("Jig", hours[k]));
    }
    return maker;
  }

  /**
   * The planner's figures against the closed negative multinomial and against 100,000 seasons drawn
   * from it, one rate a season.
   */
  @Test
  void shortagesOverSeveralEventsAreThoseOfOneSharedRate() {
    SeasonMaker maker = season(5);
    SeasonPlan plan = plan(maker, new SharedRate());
    assertEquals(4, plan.styles().size());
    for (int k = 0; k < 4; k++) {
      SeasonPlan.Line only = plan.lines().get(k); // the one item is the style
      assertEquals(
          new SeasonPlan.StyleLine(
              only.event(), "Jig", only.expectedLossPieces(), only.beforePieces()),
          plan.styles().get(k));
    }
    double[] hours = {20, 10, 30, 24};
    double[] missed = new double[4];
    double[] left = new double[4];
    double[] lasted = new double[4];
    Well19937c random = new Well19937c(11);
    GammaDistribution rates = new GammaDistribution(random, SHAPE, 1 / RATE_HOURS);
    int seasons = 100_000;
    for (int i = 0; i < seasons; i++) {
      double rate = rates.sample();
      int lost = 0;
      for (int k = 0; k < 4; k++) {
        left[k] += (double) Math.max(0, 5 - lost) / seasons;
        int here = new PoissonDistribution(random, rate * hours[k], 1e-12, 10_000).sample();
        missed[k] += (double) (Math.max(0, lost + here - 5) - Math.max(0, lost - 5)) / seasons;
        lost += here;
        lasted[k] += lost <= 5 ? 1.0 / seasons : 0;
      }
    }
    double through = 0;
    for (int k = 0; k < 4; k++) {
      through += hours[k];
      SeasonPlan.Stage stage = plan.stages().get(k);
      assertEquals(SHAPE * hours[k] / RATE_HOURS, stage.expectedLossPieces(), 1e-6);
      assertEquals(missed[k], stage.missedPieces(), 0.02);
      assertEquals(lasted[k], stage.unboughtProbability().getAsDouble(), 0.006);
      assertTrue(stage.plannedProbability().getAsDouble() >= 0.95, "as wanted");
      assertEquals(left[k], plan.lines().get(k).beforePieces(), 0.03);
      // R: pnbinom(5, size = 2, mu = 2 * through / 40)
      assertEquals(
          KnownForecast.negBin(SHAPE * through / RATE_HOURS, SHAPE).above(5),
          plan.lines().get(k).runOutProbability(),
          1e-9);
    }
    assertTrue(missed[3] > 0.5, "much is missed, so the check says something");
  }

  @Test
  void buysBeforeTheLeadTimeAndTogetherWhereNoDayIsFree() {
    SeasonMaker maker = season(2);
    SeasonPlan plan = plan(maker, new SharedRate());
    assertTrue(plan.stages().get(1).together());
    assertEquals(0, plan.stages().get(1).packs(), "bought before the first of the two");
    assertEquals(AS_OF.plusDays(3), plan.stages().get(0).buyBy().get());
    int packs = plan.purchases().stream().mapToInt(SeasonPlan.Purchase::packs).sum();
    // 84 hours, little of the risk before the last event: qnbinom(0.95, size = 2, mu = 4.2) = 11,
    // R 4.2.2: nine more than two, five packs of two.
    assertEquals(5, packs);
    assertEquals(
        packs * 5.0,
        plan.months().stream().mapToDouble(month -> month.money().doubleValue()).sum(),
        1e-9);
  }

  @Test
  void tellsWhatOfTheFirstOrderLaterEventsWant() {
    int beyond = 0;
    for (int held = 0; held < 7; held++) {
      SeasonMaker maker = season(held);
      int asked = rows(maker, new SharedRate()).get(0).buyPacks();
      for (SeasonPlan.Purchase one : plan(maker, new SharedRate()).purchases()) {
        boolean first = one.event().name().equals("E0");
        assertEquals(one.packs() - (first ? asked : 0), one.laterPacks(), "held " + held);
        beyond += first ? one.laterPacks() : 0;
      }
    }
    assertTrue(beyond > 0, "tells little");
  }

  @Test
  void buyingForALaterEventNeverTakesWhatAnEarlierNeeds() {
    for (int pieces = 0; pieces < 6; pieces++) {
      SeasonMaker maker = season(pieces);
      SeasonPlan plan = plan(maker, new SharedRate());
      int held = maker.onHand().items().get(0).aboard();
      double through = 0;
      double[] hours = {20, 10, 30, 24};
      List<Integer> bought = new ArrayList<>(List.of(0, 0, 0, 0));
      for (SeasonPlan.Purchase one : plan.purchases()) {
        int k = one.event().name().charAt(1) - '0';
        for (int j = k; j < 4; j++) {
          bought.set(j, bought.get(j) + one.pieces());
        }
      }
      for (int k = 0; k < 4; k++) {
        through += hours[k];
        assertTrue(
            KnownForecast.negBin(SHAPE * through / RATE_HOURS, SHAPE).above(held + bought.get(k))
                <= 0.05 + 1e-9);
      }
    }
  }

  @Test
  void noEventNoPlan() {
    SeasonMaker maker = new SeasonMaker().plain("Jig").aboard("Jig", "", "J1", 1);
    assertTrue(plan(maker, new KnownForecast()).stages().isEmpty());
  }
}
