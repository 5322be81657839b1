package sparewell.spares;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import sparewell.bench.BenchReport;
import sparewell.bench.SimulatedWorld;
import sparewell.numerics.CountDistribution;
import sparewell.rates.Exposure;
import sparewell.rates.LossForecast;
import sparewell.rates.LossForecast.StagedStock;
import sparewell.rates.StagedChance;
import sparewell.rates.fit.RateFit;
import sparewell.rates.fit.RateFutures;
import sparewell.season.ItemId;

/**
 * Share of times that stock bought as planned lasts through six events, on simulated seasons with
 * known truth. Nothing is on hand, packs hold one piece, events are 24 hours each, and the plan is
 * made once before the first. The chance is exact: given the true rate, losses at the events are
 * independent.
 *
 * <p>The six events lie in covers drawn as those of the trips are or, in a second and harder table,
 * all in the cover that takes most.
 *
 * <p>Arguments: seasons a row, kinds of world (comma list or all), numbers of trips, number of the
 * first season.
 */
public final class SeasonAheadBenchmark {
  private static final int EVENTS = 6;
  private static final double WANTED = 0.95;
  private static final int LARGEST = 400;
  private static final int FUTURES = 200; // that it is bought by
  private static final int STATED = 61; // that it is told by

  private SeasonAheadBenchmark() {}

  /** Runs it. */
  public static void main(String[] args) throws IOException {
    int seasons = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    List<SimulatedWorld.Kind> kinds =
        args.length > 1 && !args[1].equals("all")
            ? Arrays.stream(args[1].split(",")).map(SimulatedWorld.Kind::valueOf).toList()
            : List.of(SimulatedWorld.Kind.values());
    List<Integer> lengths =
        Arrays.stream((args.length > 2 ? args[2] : "8,16,40").split(","))
            .map(Integer::valueOf)
            .toList();
    long first = args.length > 3 ? Long.parseLong(args[3]) : 70_000;
    try (BenchReport report =
        BenchReport.of(
            "ahead",
            "Six events ahead",
            "mvn -q -Pahead test-compile -Dahead.args=\"" + String.join(" ", args) + "\"")) {
      report.text(
          "Six events of 24 hours ahead for each style, nothing on hand, packs of one, 95 % wanted at"
              + " every event; the chance is exact given the true rates. *Stated* is the chance of no"
              + " run-out at any of the six that the fit gives to what it has bought, by other draws than"
              + " it was bought by; whole pieces buy a little more than is wanted.");
      report.text("## Covers drawn as on the trips");
      table(report, kinds, seasons, lengths, false, first);
      report.text(
          "## Harder: every event in the cover that takes most, which a calibrated forecast cannot know");
      table(report, kinds, seasons, lengths, true, first);
    }
  }

  private static void table(
      BenchReport report,
      List<SimulatedWorld.Kind> kinds,
      int seasons,
      List<Integer> lengths,
      boolean worst,
      long first)
      throws IOException {
    report.table(
        List.of(
            "world",
            "seasons",
            "trips",
            "no run-out through events 1 to 6, % (s.e. of the last)",
            "stated, %",
            "pieces before event 1",
            "pieces in all",
            "oracle: no run-out, %",
            "oracle: pieces"));
    for (SimulatedWorld.Kind kind : kinds) {
      for (int trips : lengths) {
        row(report, kind, seasons, trips, worst, first);
      }
    }
  }

  private static void row(
      BenchReport report,
      SimulatedWorld.Kind kind,
      int seasons,
      int trips,
      boolean worst,
      long first) {
    List<double[]> means =
        IntStream.range(0, seasons)
            .parallel()
            .mapToObj(
                i -> {
                  SimulatedWorld world = new SimulatedWorld(kind, trips, first + i);
                  return season(world, covers(worst, first + i));
                })
            .toList();
    double[] mean = new double[means.get(0).length];
    double square = 0;
    for (double[] one : means) {
      for (int j = 0; j < mean.length; j++) {
        mean[j] += one[j] / seasons;
      }
    }
    for (double[] one : means) {
      square += Math.pow(one[EVENTS - 1] - mean[EVENTS - 1], 2);
    }
    StringBuilder chances = new StringBuilder();
    for (int k = 0; k < EVENTS; k++) {
      chances.append(String.format(Locale.ROOT, "%.1f ", 100 * mean[k]));
    }
    report.row(
        "%s | %d | %d | %s (%.1f) | %.1f | %.1f | %.1f | %.1f | %.1f",
        kind.title(),
        seasons,
        trips,
        chances.toString().strip(),
        100 * Math.sqrt(square / Math.max(1, seasons - 1) / seasons),
        100 * mean[EVENTS + 4],
        mean[EVENTS],
        mean[EVENTS + 1],
        100 * mean[EVENTS + 2],
        mean[EVENTS + 3]);
  }

  /** Cover of each event. */
  private static int[] covers(boolean worst, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    return IntStream.range(0, EVENTS)
        .map(k -> worst ? SimulatedWorld.WORST_COVER : random.nextInt(SimulatedWorld.COVERS))
        .toArray();
  }

  /** Means over the styles of a season. */
  private static double[] season(SimulatedWorld world, int[] covers) {
    RateFit fit = RateFit.of(world.input());
    double[] sum = new double[EVENTS + 5];
    RateFutures futures = new RateFutures(fit, STATED);
    StagedChance joint =
        new StagedChance(
            new RateFutures(fit, FUTURES),
            Integer::parseInt,
            use -> {
              int cover = world.logged(covers[use.stepsAhead() - 1]);
              return new RateFit.Term(use.hours(), use.days(), cover, use.stepsAhead());
            },
            item -> 1,
            (style, exposures) -> Map.of());
    for (int s = 0; s < world.styles(); s++) {
      List<CountDistribution> foreseen = new ArrayList<>();
      List<CountDistribution> known = new ArrayList<>();
      List<RateFit.Term> terms = new ArrayList<>();
      double[] through = {1};
      List<double[]> truth = new ArrayList<>();
      for (int k = 1; k <= EVENTS; k++) {
        int cover = covers[k - 1];
        terms.add(new RateFit.Term(SimulatedWorld.EVENT_HOURS, 1, world.logged(cover), k));
        foreseen.add(fit.losses(s, List.copyOf(terms)));
        truth.add(world.truth(s, cover));
        through = sum(through, world.truth(s, cover));
        known.add(distribution(through));
      }
      String style = Integer.toString(s);
      int[] pieces =
          StagedPacks.of(
              foreseen,
              0,
              1,
              WANTED,
              some -> joint.chances(stock(style, some), EVENTS)[EVENTS - 1]);
      double[] lasts = lasts(truth, pieces);
      for (int k = 0; k < EVENTS; k++) {
        sum[k] += lasts[k];
      }
      sum[EVENTS] += pieces[0];
      sum[EVENTS + 1] += pieces[EVENTS - 1];
      int[] oracle = StagedPacks.of(known, 0, 1, WANTED, some -> lasts(truth, some)[EVENTS - 1]);
      sum[EVENTS + 2] += lasts(truth, oracle)[EVENTS - 1];
      sum[EVENTS + 3] += oracle[EVENTS - 1];
      sum[EVENTS + 4] += stated(world, covers, futures, s, pieces);
    }
    return Arrays.stream(sum).map(one -> one / world.styles()).toArray();
  }

  private static List<StagedStock> stock(String style, int[] pieces) {
    ItemId item = new ItemId(style, "", "");
    List<LossForecast.Stage> stages = new ArrayList<>();
    for (int k = 1; k <= EVENTS; k++) {
      Exposure use =
          new Exposure(SimulatedWorld.EVENT_HOURS, 1, Optional.empty(), List.of(item), k);
      stages.add(new LossForecast.Stage(List.of(use), Map.of(item, pieces[k - 1])));
    }
    return List.of(new StagedStock(style, stages));
  }

  /** Chance of no run-out at any event under the fit, by other futures than it was bought by. */
  private static double stated(
      SimulatedWorld world, int[] covers, RateFutures futures, int style, int[] pieces) {
    int[] steps = IntStream.rangeClosed(1, EVENTS).toArray();
    double[][] walks = futures.rates(style, steps);
    double chance = 0;
    for (int k = 0; k < STATED; k++) {
      double size = futures.size(k);
      double[] rates = walks[k];
      List<double[]> events = new ArrayList<>();
      for (int e = 0; e < EVENTS; e++) {
        double hours = SimulatedWorld.EVENT_HOURS * futures.multiplier(k, world.logged(covers[e]));
        events.add(upTo(pieces[EVENTS - 1], rates[e] * hours, size));
      }
      chance += lasts(events, pieces)[EVENTS - 1] / STATED;
    }
    return chance;
  }

  /** Negative binomial chances of 0 to most, one from the other. */
  private static double[] upTo(int most, double mean, double size) {
    double[] mass = new double[most + 1];
    mass[0] = Math.exp(-size * Math.log1p(mean / size));
    for (int n = 1; n <= most; n++) {
      mass[n] = mass[n - 1] * (size + n - 1) / n * mean / (size + mean);
    }
    return mass;
  }

  private static double[] sum(double[] one, double[] other) {
    double[] sum = new double[Math.min(LARGEST, one.length + other.length - 1)];
    for (int i = 0; i < one.length; i++) {
      for (int j = 0; j < other.length && i + j < sum.length; j++) {
        sum[i + j] += one[i] * other[j];
      }
    }
    return sum;
  }

  private static CountDistribution distribution(double[] mass) {
    double mean = 0;
    double all = Arrays.stream(mass).sum();
    double[] scaled = new double[mass.length];
    for (int n = 0; n < mass.length; n++) {
      scaled[n] = mass[n] / Math.max(1, all);
      mean += n * scaled[n];
    }
    return CountDistribution.of(scaled, mean);
  }

  /** Chance that running losses stay within what is there up to each event. */
  private static double[] lasts(List<double[]> events, int[] pieces) {
    double[] lasts = new double[EVENTS];
    double[] running = {1};
    for (int k = 0; k < EVENTS; k++) {
      double[] next = sum(running, events.get(k));
      for (int n = 0; n < next.length; n++) {
        next[n] = n > pieces[k] ? 0 : next[n];
        lasts[k] += next[n];
      }
      running = next;
    }
    return lasts;
  }
}
