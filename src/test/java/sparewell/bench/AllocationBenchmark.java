package sparewell.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import sparewell.numerics.CountDistribution;
import sparewell.rates.Exposure;
import sparewell.rates.LossModel;
import sparewell.season.SeasonMaker;
import sparewell.spares.BuyList;
import sparewell.spares.BuyPlanner;
import sparewell.spares.KnownForecast;
import sparewell.spares.SparesPlanner;
import sparewell.spares.SparesReport;
import sparewell.spares.SparesRow;

/**
 * Allocation of stock: within the total of three of each, and packs within a budget.
 *
 * <p>Arguments: seasons for each number of trips.
 */
public final class AllocationBenchmark {
  private static final int FLAT = 3;
  private static final int TOTAL = FLAT * AllocationWorld.STYLES;

  private AllocationBenchmark() {}

  private record Result(double flat, double raw, double model, double oracle) {}

  /** Runs it. */
  public static void main(String[] args) throws IOException {
    int worlds = args.length > 0 ? Integer.parseInt(args[0]) : 400;
    try (BenchReport report =
        BenchReport.of(
            "allocation",
            "How well stock and money are spread",
            "mvn -q -Pallocation test-compile -Dseasons=" + worlds)) {
      report.text(
          "Expected shortage at the total of three of each, as a share of that of three of each; 24"
              + " styles, "
              + worlds
              + " seasons a row.");
      report.table(
          List.of(
              "families",
              "trips",
              "by raw rates",
              "by the fit",
              "by the true rates",
              "of what the true rates save, % (s.e.)"));
      for (double factor : new double[] {1, 10}) {
        for (int trips : new int[] {4, 8, 16, 40}) {
          row(report, factor, trips, worlds);
        }
      }
      packs(report);
    }
  }

  private static void row(BenchReport report, double factor, int trips, int worlds) {
    List<Result> results =
        IntStream.range(0, worlds)
            .parallel()
            .mapToObj(i -> judge(new AllocationWorld(trips, factor, 104_729L * i + trips)))
            .toList();
    double flat = results.stream().mapToDouble(Result::flat).sum();
    double raw = results.stream().mapToDouble(Result::raw).sum();
    double model = results.stream().mapToDouble(Result::model).sum();
    double oracle = results.stream().mapToDouble(Result::oracle).sum();
    double share = (flat - model) / (flat - oracle);
    // Spread of a ratio of sums, by its linear part.
    double square = 0;
    for (Result r : results) {
      double part = r.flat - r.model - share * (r.flat - r.oracle);
      square += part * part;
    }
    report.row(
        "%s | %d | %.3f | %.3f | %.3f | %.1f (%.1f)",
        factor == 1 ? "alike" : "ten times further apart",
        trips,
        raw / flat,
        model / flat,
        oracle / flat,
        100 * share,
        100 * Math.sqrt(square) / (flat - oracle));
  }

  private static Result judge(AllocationWorld world) {
    LossModel model = LossModel.fit(world.season());
    List<CountDistribution> believed = new ArrayList<>();
    for (int s = 0; s < AllocationWorld.STYLES; s++) {
      believed.add(
          model.styleLosses(
              "S" + s,
              List.of(
                  new Exposure(
                      world.eventHours(), 1, world.cover(), List.of(AllocationWorld.item(s))))));
    }
    int[] flat = new int[AllocationWorld.STYLES];
    java.util.Arrays.fill(flat, FLAT);
    return new Result(
        shortage(world.truth(), flat),
        shortage(world.truth(), proportional(world::rawRate)),
        shortage(world.truth(), marginal(believed)),
        shortage(world.truth(), marginal(world.truth())));
  }

  private static double shortage(List<CountDistribution> truth, int[] stock) {
    double sum = 0;
    for (int s = 0; s < stock.length; s++) {
      sum += truth.get(s).expectedShortage(stock[s]);
    }
    return sum;
  }

  /** The total spread by marginal analysis: each piece where it is most likely to be missed. */
  private static int[] marginal(List<CountDistribution> losses) {
    int[] stock = new int[losses.size()];
    for (int piece = 0; piece < TOTAL; piece++) {
      int best = 0;
      for (int s = 1; s < stock.length; s++) {
        if (losses.get(s).above(stock[s]) > losses.get(best).above(stock[best])) {
          best = s;
        }
      }
      stock[best]++;
    }
    return stock;
  }

  /** The total spread in proportion to rates, by largest remainders. */
  private static int[] proportional(IntToDoubleFunction rate) {
    double all = IntStream.range(0, AllocationWorld.STYLES).mapToDouble(rate).sum();
    int[] stock = new int[AllocationWorld.STYLES];
    List<Integer> order = new ArrayList<>();
    int left = TOTAL;
    for (int s = 0; s < stock.length; s++) {
      double part = all > 0 ? TOTAL * rate.applyAsDouble(s) / all : FLAT;
      stock[s] = (int) Math.floor(part);
      left -= stock[s];
      order.add(s);
    }
    order.sort(
        Comparator.comparingDouble(
            s -> -(all > 0 ? TOTAL * rate.applyAsDouble(s) / all : FLAT) % 1));
    for (int i = 0; i < left; i++) {
      stock[order.get(i % order.size())]++;
    }
    return stock;
  }

  /** Whole packs within a budget: marginal analysis alone and the list, against exact DP. */
  private static void packs(BenchReport report) {
    report.text(
        "Whole packs within a budget: expected shortage over an independent exact dynamic program, %,"
            + " 200 shops a row, 60 items each.");
    report.table(
        List.of("budget", "marginal analysis alone: mean", "worst", "the list: mean", "worst"));
    for (int budget : new int[] {20, 50, 100, 200}) {
      double[] sum = new double[2];
      double[] worst = new double[2];
      for (int round = 0; round < 200; round++) {
        double[] gap = shop(new Random(31L * round + budget), budget);
        for (int k = 0; k < 2; k++) {
          sum[k] += gap[k] / 200;
          worst[k] = Math.max(worst[k], gap[k]);
        }
      }
      report.row(
          "%d | %.3f | %.3f | %.6f | %.6f",
          budget, 100 * sum[0], 100 * worst[0], 100 * sum[1], 100 * worst[1]);
    }
  }

  private static double[] shop(Random random, int budget) {
    SeasonMaker maker = new SeasonMaker().budget(budget + ".00");
    KnownForecast forecast = new KnownForecast();
    for (int s = 0; s < 60; s++) {
      String style = "S" + s;
      int perPack = new int[] {1, 1, 2, 5, 8, 10}[random.nextInt(6)];
      int cents = 299 + 50 * random.nextInt(25);
      maker
          .style(style)
          .pack(perPack, String.format(Locale.ROOT, "%d.%02d", cents / 100, cents % 100))
          .importance(1 + random.nextInt(2))
          .aboard(style, "", "B", random.nextInt(4));
      forecast.negBin(style, Math.exp(-4 + 1.2 * random.nextGaussian()) * perPack, 1.5);
    }
    SparesReport spares = SparesPlanner.plan(maker.season(), maker.onHand(), forecast);
    BuyList list = BuyPlanner.plan(maker.season(), spares, forecast);
    double best = exact(spares.rows(), budget * 100);
    return new double[] {
      greedy(spares.rows(), budget * 100) / best - 1, list.within().shortagePieces() / best - 1
    };
  }

  private static int cents(SparesRow row) {
    return row.packPrice().orElseThrow().movePointRight(2).intValueExact();
  }

  private static double left(SparesRow row, int packs) {
    return row.importance()
        * row.losses().expectedShortage(row.aboard() + packs * row.piecesPerPack());
  }

  /** The pack with the most saved for its money that fits, until none does. */
  private static double greedy(List<SparesRow> rows, int budget) {
    int[] packs = new int[rows.size()];
    int money = budget;
    while (true) {
      int best = -1;
      double most = 0;
      for (int i = 0; i < packs.length; i++) {
        SparesRow row = rows.get(i);
        if (packs[i] == row.buyPacks()) {
          continue;
        }
        double saved = (left(row, packs[i]) - left(row, packs[i] + 1)) / cents(row);
        if (cents(row) <= money && saved > most) {
          best = i;
          most = saved;
        }
      }
      if (best < 0) {
        break;
      }
      packs[best]++;
      money -= cents(rows.get(best));
    }
    double sum = 0;
    for (int i = 0; i < packs.length; i++) {
      sum += left(rows.get(i), packs[i]);
    }
    return sum;
  }

  /** Least shortage by dynamic programming over every cent. */
  private static double exact(List<SparesRow> rows, int budget) {
    double[] least = new double[budget + 1];
    for (SparesRow row : rows) {
      double[] next = new double[budget + 1];
      double[] left = new double[row.buyPacks() + 1];
      for (int k = 0; k < left.length; k++) {
        left[k] = left(row, k);
      }
      int cost = cents(row);
      for (int money = 0; money <= budget; money++) {
        double best = Double.POSITIVE_INFINITY;
        for (int k = 0; k < left.length && k * cost <= money; k++) {
          best = Math.min(best, least[money - k * cost] + left[k]);
        }
        next[money] = best;
      }
      least = next;
    }
    return least[budget];
  }
}
