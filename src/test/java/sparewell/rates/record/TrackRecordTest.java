package sparewell.rates.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.numerics.CountDistribution;
import sparewell.rates.history.StyleUse;
import sparewell.season.SeasonMaker;

/** Sums and sentence of a track record, worked by hand. */
class TrackRecordTest {
  private static StyleUse use(int style, double hours, int lost, boolean ranOut) {
    return new StyleUse(0, style, hours, lost, ranOut, false);
  }

  /** P(N = 0), ..., P(N = 3) = 0.5, 0.3, 0.15, 0.05. */
  private static final CountDistribution LOSSES =
      CountDistribution.of(new double[] {0.5, 0.3, 0.15, 0.05}, 0.75);

  @Test
  void countsRunOutsAndPieces() {
    PolicyTally tally = new PolicyTally();
    assertEquals(OptionalDouble.empty(), tally.line("x").runOutPercent());
    assertEquals(OptionalDouble.empty(), tally.line("x").meanCarried());
    tally.add(LOSSES, 0.8, use(0, 1, 1, false)); // carries 1, and 1 is enough
    tally.add(LOSSES, 0.8, use(0, 1, 2, false));
    tally.add(LOSSES, 0.94, use(0, 1, 2, false)); // carries 2
    tally.add(7, use(0, 1, 8, true));
    TrackRecord.Line line = tally.line("ours");
    assertEquals("ours", line.policy());
    assertEquals(4, line.predictions());
    assertEquals(2, line.runOuts());
    assertEquals(50, line.runOutPercent().getAsDouble());
    assertEquals(11 / 4.0, line.meanCarried().getAsDouble());
  }

  // 90 % of the probability lies from 0.05 to 0.95. The count 0 stands for 0 to 0.5, of which 0.45
  // lie inside; 3 stands for 0.95 to 1, wholly outside.
  @ParameterizedTest
  @CsvSource({"0, 0.9", "1, 1", "2, 1", "3, 0", "4, 0"})
  void aCountOnTheEdgeOfTheIntervalCountsInPart(int lost, double part) {
    PolicyTally tally = new PolicyTally();
    tally.add(LOSSES, 0.95, use(0, 1, lost, false));
    assertEquals(0.9, tally.line("x").coverageWantedProbability().getAsDouble());
    assertEquals(part, tally.line("x").coverageGotProbability().getAsDouble(), 1e-12);
  }

  @Test
  void theRightForecasterCoversWhatIsWanted() {
    // The parts of all counts, weighted by their chances, are the interval's 90 %.
    double covered = 0;
    CountDistribution losses = new RawRatesOf(1.7).losses();
    for (int n = 0; n < losses.cut(); n++) {
      PolicyTally tally = new PolicyTally();
      tally.add(losses, 0.95, use(0, 1, n, false));
      covered += losses.probabilityOf(n) * tally.line("x").coverageGotProbability().getAsDouble();
    }
    assertEquals(0.9, covered, 1e-9);
  }

  /** The raw average of one style after an hour with so many losses. */
  private record RawRatesOf(double lost) {
    CountDistribution losses() {
      RawRates rates = new RawRates(1);
      rates.learn(use(0, 10, (int) (10 * lost), false));
      return rates.losses(use(0, 1, 0, false));
    }
  }

  @Test
  void whereAllWasGoneTheDemandIsUnknownSoNotJudged() {
    PolicyTally tally = new PolicyTally();
    tally.add(LOSSES, 0.95, use(0, 1, 3, true));
    tally.add(3, use(0, 1, 3, false));
    assertEquals(OptionalDouble.empty(), tally.line("x").coverageGotProbability());
    assertEquals(OptionalDouble.empty(), tally.line("x").coverageWantedProbability());
    tally.add(LOSSES, 0.95, use(0, 1, 1, false));
    assertEquals(1, tally.line("x").coverageGotProbability().getAsDouble());
  }

  @Test
  void rawRatesAreLossesPerHour() {
    RawRates rates = new RawRates(3);
    assertEquals(0, rates.losses(use(0, 5, 0, false)).mean());
    rates.learn(use(0, 4, 3, false));
    rates.learn(use(0, 2, 0, false));
    rates.learn(use(1, 6, 9, false));
    assertEquals(0.5 * 5, rates.losses(use(0, 5, 0, false)).mean(), 1e-12);
    assertEquals(1.5 * 4, rates.losses(use(1, 4, 0, false)).mean(), 1e-12);
    // A style not yet used has the rate of all, 12 in 12 hours; Poisson, P(0) = e^-2.
    assertEquals(2, rates.losses(use(2, 2, 0, false)).mean(), 1e-12);
    assertEquals(Math.exp(-2), rates.losses(use(2, 2, 0, false)).probabilityOf(0), 1e-8);
  }

  private static String verdict(int trips, double wanted, TrackRecord.Line... lines) {
    return Verdict.of(trips, Arrays.asList(lines), wanted);
  }

  private static TrackRecord.Line line(String policy, int runOuts, double carried) {
    return new TrackRecord.Line(
        policy,
        200,
        runOuts,
        OptionalDouble.of(runOuts / 2.0),
        OptionalDouble.of(carried),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  @Test
  void aVerdictNeedsHistory() {
    String little = "Too little history to tell: ";
    String start = little + "the record starts with the fifth trip, and ";
    assertEquals(start + "none is logged yet.", verdict(0, 0, line("a", 0, 1)));
    assertEquals(start + "4 are logged.", verdict(4, 0, line("a", 0, 1)));
    assertEquals(
        little + "with 200 predictions even the wanted chance would mean fewer than 5 run-outs.",
        verdict(5, 4.99, line("a", 0, 1)));
    assertTrue(verdict(5, 5, line("a", 0, 1)).startsWith("2.5 % run-outs were wanted at most; "));
  }

  @Test
  void theCheapestOfThoseThatKeepToTheChanceIsBest() {
    // 200 predictions at 5 %: 10 wanted, spread sqrt(10 * 0.95) = 3.08, so up to 15 are chance.
    assertEquals(
        "5.0 % run-outs were wanted at most; the b kept to it with the fewest pieces: "
            + "4.5 % run-outs with 2.0 pieces of a style on a trip.",
        verdict(30, 10, line("a", 0, 3), line("b", 9, 2), line("c", 16, 1), line("d", 10, 2)));
    assertEquals(
        "5.0 % run-outs were wanted at most; the b kept to it with the fewest pieces: "
            + "5.0 % run-outs with 2.0 pieces of a style on a trip.",
        verdict(30, 10, line("a", 0, 3), line("b", 10, 2)));
    assertEquals(
        "5.0 % run-outs were wanted at most; the b carried the fewest pieces, and was above that "
            + "by no more than chance explains: 7.5 % run-outs with 2.0 pieces of a style on a trip.",
        verdict(30, 10, line("a", 0, 3), line("b", 15, 2)));
    assertEquals(
        "5.0 % run-outs were wanted at most and no rule kept to it; the b came closest, with "
            + "8.0 % run-outs with 2.0 pieces of a style on a trip.",
        verdict(30, 10, line("a", 40, 1), line("b", 16, 2), line("c", 17, 0)));
  }

  @Test
  void chanceIsThatOfABinomialCount() {
    // 200 predictions at 50 %: spread sqrt(100 * 0.5) = 7.07, so up to 100 + 1.645 * 7.07 = 111.6.
    assertTrue(verdict(30, 100, line("a", 111, 3)).contains("no more than chance explains"));
    assertTrue(verdict(30, 100, line("a", 112, 3)).contains("no rule kept to it"));
  }

  @Test
  void aSeasonIsReplayedFromTheFifthTripOn() {
    SeasonMaker book =
        twentyTrips(new SeasonMaker().style("Shad", "Soft", "red").style("Toad", "Soft", "brown"));
    TrackRecord record = TrackRecord.of(book.season());
    assertEquals(16, record.trips());
    assertEquals(3, record.fits()); // 4, 8, 16 trips known
    assertEquals(
        List.of("recommendation", "flat three", "raw average", TrackRecord.WITH_FLOOR),
        record.lines().stream().map(TrackRecord.Line::policy).toList());
    for (TrackRecord.Line line : record.lines()) {
      assertEquals(32, line.predictions());
    }
    // Only the fifth trip took more than three; half of 5 % of 64 are wanted.
    TrackRecord.Line flat = record.lines().get(1);
    assertEquals(1, flat.runOuts());
    assertEquals(3, flat.meanCarried().getAsDouble());
    assertTrue(flat.coverageGotProbability().isEmpty());
    // Never fewer than the floor of three, and never fewer than without it.
    TrackRecord.Line floored = record.lines().get(3);
    assertTrue(floored.meanCarried().getAsDouble() >= 3);
    assertTrue(floored.runOuts() <= record.lines().get(0).runOuts());
    TrackRecord.Line ninety = TrackRecord.of(book.carryAtLeast(90).season()).lines().get(3);
    assertEquals(90, ninety.meanCarried().getAsDouble());
    assertTrue(record.sentence().contains("with 32 predictions"), record.sentence());
    // With the chance that each style wants, twenty times as many run-outs are.
    SeasonMaker even = new SeasonMaker().style("Shad", "Soft", "red").wanted(0.5);
    even.style("Toad", "Soft", "brown").wanted(0.5);
    String sentence = TrackRecord.of(twentyTrips(even).season()).sentence();
    assertTrue(sentence.startsWith("50.0 % run-outs were wanted at most"), sentence);
  }

  private static SeasonMaker twentyTrips(SeasonMaker book) {
    for (int t = 0; t < 20; t++) {
      book.trip("T" + t, t, 8, "").thrown("T" + t, "Shad", 2).thrown("T" + t, "Toad", 4);
    }
    book.lost("T3", "Shad", "red", 50).lost("T4", "Shad", "red", 4);
    return book.lost("T8", "Toad", "brown", 3).carryAtLeast(3);
  }
}
