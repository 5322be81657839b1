package sparewell.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import sparewell.experience.Club;
import sparewell.experience.Entry;
import sparewell.experience.Pool;
import sparewell.experience.Unit;
import sparewell.numerics.CountDistribution;
import sparewell.rates.BesideClub;
import sparewell.rates.OwnRows;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.RateFit;

/**
 * Gain of a new angler from the experience of a club, on simulated clubs with known truth. Scores
 * are exact expectations under the true distribution of the event's losses.
 *
 * <p>Arguments: worlds, clubs (comma list of numbers of anglers), numbers of trips of the new
 * angler, number of the first world.
 */
public final class ExperienceBenchmark {
  private static final double WANTED = 0.95;
  private static final int CLUB_TRIPS = 16;
  private static final int NEW_ANGLER = 1_000;

  private ExperienceBenchmark() {}

  /** Scores of one forecaster, summed over styles; spread over worlds of the log score. */
  private static final class Score {
    double covered;
    double stock;
    double gap;
    double hits;
    double shortage; // of stock equal to flat three's in total
    int styles;
    final List<Double> gaps = new ArrayList<>();

    void add(Score other) {
      covered += other.covered;
      stock += other.stock;
      gap += other.gap;
      hits += other.hits;
      shortage += other.shortage;
      styles += other.styles;
      gaps.add(other.gap / other.styles);
    }

    double error() {
      double mean = gaps.stream().mapToDouble(g -> g).average().orElse(0);
      double sum = gaps.stream().mapToDouble(g -> (g - mean) * (g - mean)).sum();
      return Math.sqrt(sum / Math.max(1, gaps.size() - 1.0) / gaps.size());
    }
  }

  /** Runs it. */
  public static void main(String[] args) throws IOException {
    int worlds = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    int[] clubs = numbers(args.length > 1 ? args[1] : "5,20,50");
    int[] lengths = numbers(args.length > 2 ? args[2] : "0,2,4,8,16");
    int first = args.length > 3 ? Integer.parseInt(args[3]) : 0;
    List<Map<String, Score>> each =
        IntStream.range(first, first + worlds)
            .parallel()
            .mapToObj(i -> world(new ClubWorld(9_973L * i + 17), clubs, lengths))
            .toList();
    Map<String, Score> sums = new LinkedHashMap<>();
    for (Map<String, Score> world : each) {
      world.forEach((name, score) -> sums.computeIfAbsent(name, n -> new Score()).add(score));
    }
    try (BenchReport report =
        BenchReport.of(
            "experience",
            "What the experience of a club is worth to a new angler",
            "mvn -q -Pexperience test-compile -Dexperience.args=\""
                + String.join(" ", args)
                + "\"")) {
      report.text(
          worlds
              + " worlds with log-normal rates, 16 trips an angler; each angler's rate of each style is"
              + " the club's typical one times a log-normal factor (sd 0.4). *Ideal* knows the typical"
              + " rates, how anglers differ, the size and the covers; *misleading* is the club of 20"
              + " with all rates three times too low.");
      report.table(
          List.of(
              "trips",
              "prior",
              "no run-out %",
              "pieces a style",
              "log score below the oracle (s.e.)",
              "of the way to the ideal %",
              "90 % interval covers %",
              "shortage at flat three's stock"));
      sums.forEach((name, score) -> row(report, sums, name, score));
    }
  }

  private static void row(BenchReport report, Map<String, Score> sums, String name, Score score) {
    String trips = name.substring(0, name.indexOf(' '));
    double without = sums.get(trips + " none").gap / score.styles;
    double ideal = sums.get(trips + " ideal").gap / score.styles;
    double gap = score.gap / score.styles;
    report.row(
        "%s | %s | %.1f | %.2f | %.4f (%.4f) | %.0f | %.1f | %.3f",
        trips,
        name.substring(trips.length() + 1),
        100 * score.covered / score.styles,
        score.stock / score.styles,
        gap,
        score.error(),
        100 * (without - gap) / (without - ideal),
        100 * score.hits / score.styles,
        score.shortage / score.styles);
  }

  private static int[] numbers(String list) {
    return Arrays.stream(list.split(",")).mapToInt(Integer::parseInt).toArray();
  }

  private static Map<String, Score> world(ClubWorld world, int[] clubs, int[] lengths) {
    int most = Arrays.stream(clubs).max().orElseThrow();
    List<List<Entry>> rows = new ArrayList<>();
    List<List<Entry>> misleading = new ArrayList<>();
    for (int a = 1; a <= most; a++) {
      rows.add(rows(world, world.angler(a, CLUB_TRIPS, 1), a));
      if (a <= 20) {
        misleading.add(rows(world, world.angler(a, CLUB_TRIPS, 1 / 3.0), a));
      }
    }
    ClubWorld.Angler angler =
        world.angler(NEW_ANGLER, Arrays.stream(lengths).max().orElseThrow(), 1);
    Map<String, Score> scores = new LinkedHashMap<>();
    for (int trips : lengths) {
      List<Observation> log = angler.log().stream().filter(one -> one.trip() < trips).toList();
      double[][] ideal = new double[world.styles()][];
      double[][] flat = new double[world.styles()][];
      for (int s = 0; s < ideal.length; s++) {
        ideal[s] = world.ideal(s, log);
      }
      RateFit alone = RateFit.of(world.input(log));
      int cover = log.isEmpty() ? Observation.NEVER_LOGGED : ClubWorld.EVENT_COVER;
      scores.put(trips + " none", score(world, angler, log, alone, cover));
      for (int club : clubs) {
        scores.put(trips + " club of " + club, beside(world, angler, log, rows.subList(0, club)));
      }
      if (!misleading.isEmpty()) {
        scores.put(trips + " misleading club", beside(world, angler, log, misleading));
      }
      scores.put(trips + " ideal", score(world, angler, ideal));
      Arrays.fill(flat, new double[] {1});
      scores.put(trips + " flat three", score(world, angler, flat));
    }
    return scores;
  }

  private static List<String> names(String what, int count) {
    return IntStream.range(0, count).mapToObj(i -> what + " " + i).toList();
  }

  private static List<Entry> rows(ClubWorld world, ClubWorld.Angler angler, int number) {
    return OwnRows.of(
        RateFit.of(world.input(angler.log())),
        new OwnRows.Log(
            "log " + number,
            "print " + number,
            2026,
            Unit.PIECES_PER_HOUR_THROWN,
            8.0 * CLUB_TRIPS,
            names("style", world.styles()),
            names("family", 4),
            names("cover", 3)),
        name -> name);
  }

  private static Score beside(
      ClubWorld world, ClubWorld.Angler angler, List<Observation> log, List<List<Entry>> rows) {
    Club club =
        Club.of(Pool.of(rows.stream().flatMap(List::stream).toList()), Unit.PIECES_PER_HOUR_THROWN)
            .orElseThrow();
    RateFit fit =
        BesideClub.fit(
            world.input(log),
            club,
            new BesideClub.Names(
                names("style", world.styles()),
                world.family.stream().map(f -> "family " + f).toList(),
                names("cover", 3)));
    return score(world, angler, log, fit, ClubWorld.EVENT_COVER);
  }

  private static Score score(
      ClubWorld world, ClubWorld.Angler angler, List<Observation> log, RateFit fit, int cover) {
    double[][] said = new double[world.styles()][];
    List<RateFit.Term> event = List.of(new RateFit.Term(ClubWorld.EVENT_HOURS, 1, cover));
    int hits = 0;
    for (int s = 0; s < said.length; s++) {
      CountDistribution losses = fit.losses(s, event);
      said[s] = new double[ClubWorld.LARGEST + 1];
      for (int n = 0; n < said[s].length; n++) {
        said[s][n] = losses.probabilityOf(n);
      }
      var rate = fit.rate(s);
      double truth = angler.rate()[s] * world.mix(log);
      hits += rate.low90() <= truth && truth <= rate.high90() ? 1 : 0;
    }
    Score score = score(world, angler, said);
    score.hits = hits;
    return score;
  }

  private static Score score(ClubWorld world, ClubWorld.Angler angler, double[][] said) {
    Score score = new Score();
    int[] equal = new int[said.length];
    for (int s = 0; s < said.length; s++) {
      double[] truth = world.event(angler.rate()[s]);
      double sum = Arrays.stream(said[s]).sum();
      double claimed = 0;
      double seen = 0;
      int stock = 0;
      for (int n = 0; n < truth.length; n++) {
        double q = n < said[s].length ? Math.max(said[s][n] / sum, 1e-13) : 1e-13;
        if (claimed < WANTED - 1e-12) {
          claimed += q;
          stock = n;
        }
        if (n <= stock) {
          seen += truth[n];
        }
        score.gap += truth[n] > 0 ? truth[n] * (Math.log(truth[n]) - Math.log(q)) : 0;
      }
      score.covered += seen;
      score.stock += stock;
      score.styles++;
      equal[s] = 3;
    }
    if (said[0].length > 1) {
      spread(said, equal);
    }
    for (int s = 0; s < said.length; s++) {
      double below = 0;
      double[] truth = world.event(angler.rate()[s]);
      for (int n = 0; n < truth.length; n++) {
        below += truth[n];
        score.shortage += n >= equal[s] ? Math.max(0, 1 - below) : 0;
      }
    }
    return score;
  }

  /** Three pieces a style, each put where it is most likely to be missing. */
  private static void spread(double[][] said, int[] pieces) {
    double[] missing = new double[said.length];
    for (int s = 0; s < said.length; s++) {
      pieces[s] = 0;
      missing[s] = 1 - said[s][0];
    }
    for (int k = 0; k < 3 * said.length; k++) {
      int best = 0;
      for (int s = 1; s < said.length; s++) {
        best = missing[s] > missing[best] ? s : best;
      }
      pieces[best]++;
      missing[best] -= said[best][pieces[best]];
    }
  }
}
