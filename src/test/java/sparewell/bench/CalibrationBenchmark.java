package sparewell.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.NegativeBinomial;
import sparewell.rates.fit.Beliefs;
import sparewell.rates.fit.Estimate;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Hyperprior;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.RateFit;

/**
 * Calibration of predicted losses on simulated seasons with known truth. All scores are exact
 * expectations under the true distribution of the event's losses.
 *
 * <p>Arguments: seasons per number of trips, kinds of world (comma list or all), numbers of trips,
 * number of the first season.
 */
public final class CalibrationBenchmark {
  private static final double WANTED = 0.95;
  private static final Hyperprior NEARLY_FLAT =
      new Hyperprior(
          Math.log(0.06),
          4,
          Math.log(0.4),
          2.5,
          Math.log(0.5),
          2.5,
          Math.log(2),
          2.5,
          2,
          Hyperprior.Walk.NONE);

  private CalibrationBenchmark() {}

  /** Scores of one forecaster in one world, summed over its styles. */
  private static final class Score {
    double covered;
    double claimed;
    double stock;
    double shortage;
    double gap;
    double rateHits;
    int styles;
    final List<Double> worldGaps = new ArrayList<>();

    void add(Score other) {
      covered += other.covered;
      claimed += other.claimed;
      stock += other.stock;
      shortage += other.shortage;
      gap += other.gap;
      rateHits += other.rateHits;
      styles += other.styles;
      worldGaps.add(other.gap / other.styles);
    }

    double gapError() {
      double mean = worldGaps.stream().mapToDouble(Double::doubleValue).average().orElse(0);
      double square =
          worldGaps.stream().mapToDouble(g -> (g - mean) * (g - mean)).sum()
              / Math.max(1, worldGaps.size() - 1);
      return Math.sqrt(square / worldGaps.size());
    }
  }

  /** Runs it. */
  public static void main(String[] args) throws IOException {
    int worlds = args.length > 0 ? Integer.parseInt(args[0]) : 400;
    List<SimulatedWorld.Kind> kinds =
        args.length > 1 && !args[1].equals("all")
            ? java.util.Arrays.stream(args[1].split(",")).map(SimulatedWorld.Kind::valueOf).toList()
            : List.of(SimulatedWorld.Kind.values());
    int[] lengths =
        args.length > 2
            ? java.util.Arrays.stream(args[2].split(",")).mapToInt(Integer::parseInt).toArray()
            : new int[] {4, 8, 16, 40};
    int first = args.length > 3 ? Integer.parseInt(args[3]) : 0;
    try (BenchReport report =
        BenchReport.of(
            "calibration",
            "Loss rates on simulated seasons with known truth",
            "mvn -q -Pcalibration test-compile -Dcalibration.args=\""
                + String.join(" ", args)
                + "\"")) {
      report.text(
          "12 to 24 styles in 4 families, three covers, an event of 24 hours for each style, 95 %"
              + " wanted. *No run-out* is the true chance that the advised count lasts; the log score is"
              + " per style and event, nats below a forecaster who knows the true rates.");
      report.table(
          List.of(
              "world",
              "seasons",
              "trips",
              "forecaster",
              "no run-out %",
              "claimed %",
              "pieces a style",
              "expected shortage",
              "log score below the oracle (s.e.)",
              "90 % interval covers %"));
      for (SimulatedWorld.Kind kind : kinds) {
        for (int trips : lengths) {
          rows(report, kind, worlds, trips, run(kind, trips, first, worlds));
        }
      }
    }
  }

  private static Map<String, Score> run(
      SimulatedWorld.Kind kind, int trips, int first, int worlds) {
    List<Map<String, Score>> each =
        IntStream.range(first, first + worlds)
            .parallel()
            .mapToObj(i -> judge(new SimulatedWorld(kind, trips, 7_919L * i + trips)))
            .toList();
    Map<String, Score> sums = new LinkedHashMap<>();
    for (Map<String, Score> world : each) {
      world.forEach((name, score) -> sums.computeIfAbsent(name, n -> new Score()).add(score));
    }
    return sums;
  }

  private static void rows(
      BenchReport report,
      SimulatedWorld.Kind kind,
      int worlds,
      int trips,
      Map<String, Score> sums) {
    sums.forEach(
        (name, score) -> {
          double n = score.styles;
          report.row(
              "%s | %d | %d | %s | %.1f | %s | %.2f | %.3f | %s | %s",
              kind.title(),
              worlds,
              trips,
              name,
              100 * score.covered / n,
              score.claimed > 0 ? fixed("%.1f", 100 * score.claimed / n) : "",
              score.stock / n,
              score.shortage / n,
              Double.isNaN(score.gap)
                  ? ""
                  : Double.isInfinite(score.gap)
                      ? "infinite"
                      : fixed("%.3f", score.gap / n) + fixed(" (%.3f)", score.gapError()),
              score.rateHits > 0 ? fixed("%.1f", 100 * score.rateHits / n) : "");
        });
  }

  private static String fixed(String format, double value) {
    return String.format(Locale.ROOT, format, value);
  }

  private static Map<String, Score> judge(SimulatedWorld world) {
    Map<String, Score> scores = new LinkedHashMap<>();
    scores.put("oracle", new Score());
    RateFit full = RateFit.of(world.input());
    List<RateFit.Term> event =
        List.of(new RateFit.Term(SimulatedWorld.EVENT_HOURS, 1, world.eventCover()));
    scores.put("Sparewell", fitted(world, full, event));
    scores.put(
        "plug-in, peak under the weak prior",
        fitted(world, RateFit.of(world.input(), Hyperprior.WEAK, Beliefs.NONE, 0), event));
    scores.put(
        "plug-in empirical Bayes",
        fitted(world, RateFit.of(world.input(), NEARLY_FLAT, Beliefs.NONE, 0), event));
    double[] lost = new double[world.styles()];
    double[] hours = new double[world.styles()];
    double allLost = 0.5;
    double allHours = 0;
    for (Observation o : world.input().observations()) {
      lost[o.style()] += o.lostPieces();
      hours[o.style()] += o.hours();
      allLost += o.lostPieces();
      allHours += o.hours();
    }
    double pooled = allLost / Math.max(allHours, 1);
    scores.put("fully pooled", fitted(world, pooledFit(world.input()), event));
    Score raw = new Score();
    Score half = new Score();
    Score three = new Score();
    Score oracle = scores.get("oracle");
    for (int s = 0; s < world.styles(); s++) {
      double own = hours[s] > 0 ? lost[s] / hours[s] : pooled;
      add(raw, world.truth(s), poisson(own * SimulatedWorld.EVENT_HOURS), -2);
      double ownHalf = hours[s] > 0 ? (lost[s] + 0.5) / hours[s] : pooled;
      add(half, world.truth(s), poisson(ownHalf * SimulatedWorld.EVENT_HOURS), -2);
      add(three, world.truth(s), null, 3);
      add(oracle, world.truth(s), world.truth(s), -1);
    }
    scores.put("raw rate", raw);
    scores.put("raw rate, half a loss added", half);
    scores.put("three of each", three);
    return scores;
  }

  /** One rate for all styles: the same model with styles and families all but equal. */
  private static RateFit pooledFit(FitInput input) {
    List<Integer> one = input.familyOfStyle().stream().map(f -> 0).toList();
    FitInput pooled = new FitInput(one, 1, input.covers(), input.observations());
    return RateFit.of(
        pooled,
        new Hyperprior(
            Math.log(0.06),
            4,
            Math.log(0.02),
            0.01,
            Math.log(0.06),
            0.01,
            Math.log(2),
            2.5,
            2,
            Hyperprior.Walk.NONE),
        Beliefs.NONE,
        0);
  }

  private static double[] poisson(double mean) {
    double[] mass = new double[SimulatedWorld.LARGEST + 1];
    for (int n = 0; n < mass.length; n++) {
      mass[n] = Math.exp(NegativeBinomial.logPmf(n, mean, 1e15));
    }
    return mass;
  }

  private static Score fitted(SimulatedWorld world, RateFit fit, List<RateFit.Term> event) {
    Score score = new Score();
    for (int s = 0; s < world.styles(); s++) {
      CountDistribution losses = fit.losses(s, event);
      double[] mass = new double[SimulatedWorld.LARGEST + 1];
      for (int n = 0; n < mass.length; n++) {
        mass[n] = losses.probabilityOf(n);
      }
      add(score, world.truth(s), mass, -1);
      Estimate rate = fit.rate(s);
      double truth = world.rateAtMix(s);
      score.rateHits += rate.low90() <= truth && truth <= rate.high90() ? 1 : 0;
    }
    return score;
  }

  private static void add(Score score, double[] truth, double[] said, int fixedStock) {
    int stock = fixedStock;
    double claimed = 0;
    double gap = Double.NaN;
    if (said != null) {
      double sum = 0;
      for (double p : said) {
        sum += p;
      }
      double cumulative = 0;
      stock = 0;
      gap = 0;
      for (int n = 0; n < said.length; n++) {
        // Forecasts are cut where 1e-10 is left.
        double q = Math.max(said[n] / sum, fixedStock < -1 ? 0 : 1e-13);
        if (cumulative < WANTED - 1e-12) {
          cumulative += q;
          stock = n;
        }
        if (truth[n] > 0) {
          gap += truth[n] * (Math.log(truth[n]) - Math.log(q));
        }
      }
      claimed = cumulative;
    }
    double below = 0;
    double shortage = 0;
    double covered = 0;
    for (int n = 0; n < truth.length; n++) {
      below += truth[n];
      if (n == stock) {
        covered = below;
      }
      if (n >= stock) {
        shortage += Math.max(0, 1 - below);
      }
    }
    score.covered += covered;
    score.claimed += claimed;
    score.stock += stock;
    score.shortage += shortage;
    score.gap += gap;
    score.styles++;
  }
}
