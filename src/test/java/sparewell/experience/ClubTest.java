package sparewell.experience;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;

class ClubTest {
  private static Entry row(
      String log, Kind kind, Unit unit, String name, double estimate, double variance) {
    return new Entry(
        log,
        "print " + log,
        2026,
        new Key(kind, unit, name),
        name,
        "fam",
        "fam",
        estimate,
        variance,
        16,
        40,
        3);
  }

  private static Entry style(String log, double pieces, double hours) {
    return row(
        log,
        Kind.STYLE,
        Unit.PIECES_PER_HOUR_THROWN,
        "jig",
        Math.log((pieces + 0.5) / hours),
        1 / (pieces + 0.5));
  }

  private static List<Entry> honest(int logs) {
    List<Entry> rows = new ArrayList<>();
    for (int i = 0; i < logs; i++) {
      rows.add(style("log " + i, i % 3 + 2, 40));
      rows.add(
          row(
              "log " + i,
              Kind.SPREAD,
              Unit.PIECES_PER_HOUR_THROWN,
              "common rate",
              Math.log(0.06),
              0.2));
      rows.add(row("log " + i, Kind.COVER, Unit.TIMES, "wood", 0.3 + 0.02 * (i % 3), 0.1));
    }
    return rows;
  }

  private static Club club(List<Entry> rows) {
    return Club.of(Pool.of(rows), Unit.PIECES_PER_HOUR_THROWN).orElseThrow();
  }

  private static double typical(List<Entry> rows) {
    return club(rows).style("jig", "fam").log().mean();
  }

  @Test
  void manyLogsSettleATypicalRate() {
    // 3 pieces in 40 hours on average.
    assertEquals(Math.log(3 / 40.0), typical(honest(60)), 0.06);
    Club club = club(honest(60));
    assertEquals(Club.Source.STYLE, club.style("jig", "fam").source());
    assertEquals(60, club.style("jig", "fam").anglers());
    assertTrue(club.style("jig", "fam").log().variance() < 0.01);
    assertTrue(club.style("other", "none").log().variance() > 0.3);
    assertEquals(Club.Source.OTHERS, club.style("other", "none").source());
    assertEquals(0.32, club.cover("wood").orElseThrow().mean(), 0.02);
    assertTrue(club.cover("grass").isEmpty());
  }

  @Test
  void sparseLogsShowHowFarAnglersDiffer() {
    Well19937c random = new Well19937c(42);
    double sum = 0;
    for (int club = 0; club < 12; club++) {
      List<Entry> rows = new ArrayList<>();
      for (int style = 0; style < 15; style++) {
        for (int log = 0; log < 20; log++) {
          double mean = 2 * Math.exp(0.4 * random.nextGaussian());
          double pieces = new PoissonDistribution(random, mean, 1e-12, 1_000).sample();
          rows.add(
              row(
                  "log " + log,
                  Kind.STYLE,
                  Unit.PIECES_PER_HOUR_THROWN,
                  "style " + style,
                  Math.log((pieces + 0.5) / 25),
                  1 / (pieces + 0.5)));
        }
      }
      Club of = club(rows);
      sum += Math.exp(2 * of.logBetween() + 2 * Math.pow(of.logBetweenSpread(), 2));
    }
    assertEquals(0.4, Math.sqrt(sum / 12), 0.03);
  }

  @Test
  void logsWithoutALossCountAsWhatTheyAre() {
    List<Entry> rows = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      rows.add(style("log " + i, i % 4 == 0 ? 1 : 0, 25));
    }
    // 10 pieces in 1,000 hours; a mean of the estimates would say 0.025.
    assertEquals(Math.log(0.01), typical(rows), 0.25);
  }

  /** Whatever one row says, it moves a typical rate by little: promised for ten honest logs. */
  @Test
  void aStrangersRowMovesLittle() {
    double before = typical(honest(10));
    double cover = club(honest(10)).cover("wood").orElseThrow().mean();
    double most = 0;
    for (double estimate = Entry.LEAST_ESTIMATE; estimate <= Entry.MOST_ESTIMATE; estimate++) {
      for (double variance : new double[] {1e-9, 0.04, 0.5, 2, 50}) {
        List<Entry> rows = honest(10);
        rows.add(row("liar", Kind.STYLE, Unit.PIECES_PER_HOUR_THROWN, "jig", estimate, variance));
        rows.add(row("liar", Kind.COVER, Unit.TIMES, "wood", estimate, variance));
        most = Math.max(most, Math.abs(typical(rows) - before));
        double share = RandomEffectsTest.largestShare(11, 0, 1 / 0.1);
        double moved = Math.abs(club(rows).cover("wood").orElseThrow().mean() - cover);
        assertTrue(moved <= share * Math.abs(estimate - cover) + 1e-9, estimate + " " + variance);
      }
    }
    assertTrue(most < 0.2, "moved by " + most);
  }

  @Test
  void aLogGivenTwiceCountsOnceAndSoDoesACopy() {
    List<Entry> rows = honest(5);
    Club once = club(rows);
    List<Entry> twice = new ArrayList<>(rows);
    twice.addAll(rows);
    for (Entry entry : honest(5)) {
      twice.add(
          new Entry(
              "z" + entry.logId(),
              entry.fingerprint(),
              2026,
              entry.key(),
              entry.name(),
              entry.family(),
              entry.familyKey(),
              entry.logEstimate(),
              entry.logVariance(),
              entry.trips(),
              entry.hours(),
              entry.pieces()));
    }
    assertEquals(once.style("jig", "fam"), club(twice).style("jig", "fam"));
    assertEquals(5, club(twice).anglers());
  }

  @Test
  void aLaterStateOfALogTakesThePlaceOfTheEarlier() {
    Entry earlier = style("a", 2, 40);
    Entry later =
        new Entry("a", "later", 2027, earlier.key(), "jig", "fam", "fam", -1, 0.2, 30, 90, 9);
    Pool pool = Pool.of(List.of(later, earlier));
    assertEquals(1, pool.logs(earlier.key()));
    assertEquals(-1, pool.of(earlier.key()).get(0).estimate());
  }

  @Test
  void hoursOfThrowingAreAShareOfHoursAfloat() {
    assertEquals(1, club(honest(4)).share("jig").orElseThrow(), 1e-12);
    assertTrue(club(honest(4)).share("other").isEmpty());
  }

  @Test
  void aLogOfAMillionHoursDoesNotMoveThatShare() {
    for (Entry like : honest(1)) {
      List<Entry> rows = honest(9);
      rows.add(
          new Entry(
              "liar",
              "print liar",
              2026,
              like.key(),
              like.name(),
              like.family(),
              like.familyKey(),
              -3,
              0.04,
              16,
              1e6,
              9));
      assertEquals(1, club(rows).share("jig").orElseThrow(), 1e-12, like.key().toString());
    }
  }
}
