package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static sparewell.spares.ReferenceTable.number;
import static sparewell.spares.ReferenceTable.whole;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sparewell.numerics.CountDistribution;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;
import sparewell.stock.OnHand;

/** Expected shortage, chances and the count to carry against tables computed elsewhere. */
class LossTablesTest {
  /** R 4.2.2, the calls stand in the first line of the table. */
  @Test
  void poissonShortageAgreesWithR() {
    List<Map<String, String>> table = ReferenceTable.read("poisson-loss.csv");
    assertEquals(54, table.size());
    for (Map<String, String> row : table) {
      SparesRow plan = row(KnownForecast.poisson(number(row, "mu")), whole(row, "s"));
      String at = row.toString();
      assertEquals(number(row, "ebo"), plan.losses().expectedShortage(plan.aboard()), 2e-12, at);
      assertEquals(number(row, "ready"), 1 - plan.runOutNowProbability(), 1e-12, at);
      assertEquals(number(row, "marginal"), plan.runOutNowProbability(), 1e-12, at);
    }
  }

  /** R 4.2.2, the calls stand in the first line of the table. */
  @Test
  void negativeBinomialShortageAgreesWithR() {
    List<Map<String, String>> table = ReferenceTable.read("negbin-loss.csv");
    assertEquals(54, table.size());
    for (Map<String, String> row : table) {
      CountDistribution losses = KnownForecast.negBin(number(row, "mean"), number(row, "size"));
      assertEquals(
          number(row, "loss"), losses.expectedShortage(whole(row, "s")), 1e-10, row.toString());
    }
  }

  /**
   * The count to carry at chance f is the newsvendor's stock for a missing piece that costs 1 and a
   * carried piece that costs 1 - f; scipy 1.10.1, the calls stand in the first line of the table.
   */
  @Test
  void carryIsTheCriticalFractile() {
    List<Map<String, String>> table = ReferenceTable.read("newsvendor.csv");
    assertEquals(48, table.size());
    for (Map<String, String> row : table) {
      double mean = number(row, "mean");
      double chance = number(row, "fractile");
      SeasonMaker maker =
          new SeasonMaker().chance(chance, false).plain("Jig").aboard("Jig", "", "J1", 0);
      KnownForecast forecast =
          row.get("size").equals("inf")
              ? new KnownForecast().poisson("Jig", mean / 24)
              : new KnownForecast().negBin("Jig", mean / 24, number(row, "size"));
      SparesRow plan = SparesPlanner.plan(maker.season(), maker.onHand(), forecast).rows().get(0);
      assertEquals(whole(row, "stock"), plan.carry(), row.toString());
      assertEquals(plan.carry(), cheapest(plan.losses(), 1 - chance), "least cost: " + row);
    }
  }

  /** The count with the least carrying cost plus expected shortage, by trying all. */
  private static int cheapest(CountDistribution losses, double costEach) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int n = 0; n < losses.cut(); n++) {
      double cost = costEach * n + losses.expectedShortage(n);
      if (cost < least - 1e-12) {
        least = cost;
        best = n;
      }
    }
    return best;
  }

  private static SparesRow row(CountDistribution losses, int aboard) {
    SeasonMaker maker = new SeasonMaker().plain("Jig").aboard("Jig", "", "J1", aboard);
    Season season = maker.season();
    OnHand onHand = maker.onHand();
    SparesReport report =
        SparesPlanner.plan(season, onHand, new KnownForecast().poisson("Jig", losses.mean() / 24));
    assertEquals(new ItemId("Jig", "", ""), report.rows().get(0).item());
    return report.rows().get(0);
  }
}
