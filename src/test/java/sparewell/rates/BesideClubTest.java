package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.experience.Club;
import sparewell.experience.Entry;
import sparewell.experience.Kind;
import sparewell.experience.Pool;
import sparewell.experience.Unit;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.OwnEvidence;
import sparewell.rates.fit.RateFit;
import sparewell.season.SeasonMaker;

class BesideClubTest {
  private static final List<String> STYLES = List.of("a", "b", "c", "new");

  /** Each style loses so many pieces on each trip of 5 hours, in cover 0 and 1 in turn. */
  private static FitInput log(int trips, int... pieces) {
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      for (int s = 0; s < pieces.length; s++) {
        int lost = t % 4 == 0 ? 2 * pieces[s] : t % 2 == 0 ? 0 : pieces[s];
        log.add(new Observation(s, t, 5, 1, t % 2, lost, false, 1));
      }
    }
    return new FitInput(List.of(0, 0, 1, 1), 2, log.isEmpty() ? 0 : 2, log);
  }

  private static List<Entry> rows(int logs, int... pieces) {
    List<Entry> rows = new ArrayList<>();
    for (int i = 0; i < logs; i++) {
      rows.addAll(
          OwnRows.of(
              RateFit.of(log(12, pieces)),
              new OwnRows.Log(
                  "log " + i,
                  "print " + i,
                  2026,
                  Unit.PIECES_PER_HOUR_THROWN,
                  100,
                  STYLES,
                  List.of("f", "g"),
                  List.of("wood", "rock")),
              name -> name));
    }
    return rows;
  }

  private static RateFit beside(FitInput input, List<Entry> rows) {
    return BesideClub.fit(
        input,
        Club.of(Pool.of(rows), Unit.PIECES_PER_HOUR_THROWN).orElseThrow(),
        new BesideClub.Names(STYLES, List.of("f", "f", "g", "g"), List.of("wood", "rock")));
  }

  @Test
  void whatALogSaysIsItsLikelihoodWithoutThePrior() {
    RateFit fit = RateFit.of(log(12, 1, 0, 3));
    OwnEvidence evidence = new OwnEvidence(fit);
    OwnEvidence.Gamma first = evidence.rate(0).orElseThrow();
    // 12 pieces in 60 hours, on which days bring extra variation: worth somewhat less.
    assertEquals(12 / 60.0, first.pieces() / first.hours(), 0.012);
    assertTrue(first.pieces() < 12 && first.pieces() > 4, "pieces " + first.pieces());
    OwnEvidence.Gamma without = evidence.rate(1).orElseThrow();
    assertEquals(0, without.pieces(), 0.02);
    assertTrue(without.hours() > 50 && without.hours() < 61, "hours " + without.hours());
    assertTrue(evidence.rate(3).isEmpty(), "never thrown");
  }

  /** 12 trips of 5 hours a style; of four trips one loses twice as many, one none. */
  @Test
  void everyRowNamesTheTripsHoursAndPiecesBehindIt() {
    List<String> behind =
        rows(1, 1, 0, 3).stream()
            .map(row -> row.name() + " " + row.trips() + " " + row.hours() + " " + row.pieces())
            .toList();
    assertEquals(
        List.of(
            "a 12 60.0 12",
            "b 12 60.0 0",
            "c 12 60.0 36",
            "f 12 120.0 12",
            "g 12 60.0 36",
            "wood 6 90.0 24",
            "rock 6 90.0 24"),
        behind.subList(0, 7));
    assertEquals(Kind.Spread.COMMON_RATE.key() + " 12 100.0 48", behind.get(7));
  }

  private static LossModel model(SeasonMaker log) {
    log.style("a", "f").style("b", "f").style("c", "g").style("new", "g");
    log.event("Derby", "rock").event("Cup", "weeds");
    Pool pool = Pool.of(rows(5, 1, 0, 3));
    return LossModel.fit(log.season(), Optional.of(new Others(pool, "club.csv", name -> name)));
  }

  private static List<String> said(LossModel model, Code code) {
    return model.findings().stream()
        .filter(finding -> finding.code() == code)
        .map(Finding::message)
        .toList();
  }

  @Test
  void aSeasonLeansOnLogsOfItsUnit() {
    SeasonMaker log = new SeasonMaker().trip("T", 1, 8, "wood").thrown("T", "a", 2);
    LossModel model = model(log.lost("T", "a", "", 1));
    assertEquals(5, model.otherLogs());
    assertTrue(said(model, Code.EXPERIENCE_USED).get(0).contains("5 other logs"));
    List<String> covers = said(model, Code.COVER_NEVER_LOGGED);
    assertTrue(covers.size() == 1 && covers.get(0).contains("weeds"), "rock is known to others");
    assertEquals("rests on 1 trip, leans on 5 other logs", model.styles().get(0).note());
    assertEquals(5, model(new SeasonMaker()).otherLogs(), "a blank log");
    LossModel afloat = model(new SeasonMaker().trip("T", 1, 8, "wood"));
    assertEquals(0, afloat.otherLogs(), "rates per hour afloat are another unit");
    assertEquals(1, said(afloat, Code.EXPERIENCE_OF_NO_USE).size());
  }

  @Test
  void aBlankLogHasTheClubsRatesWithWideDoubt() {
    RateFit fit = beside(log(0), rows(8, 1, 0, 3));
    var a = fit.rate(0);
    var c = fit.rate(2);
    assertEquals(0.2, a.mean(), 0.06);
    assertEquals(0.6, c.mean(), 0.15);
    assertTrue(a.low90() < 0.14 && a.high90() > 0.28, a.toString());
    assertTrue(fit.rate(1).high90() < a.mean(), "no club mate lost one");
    assertTrue(
        fit.rate(3).high90() / fit.rate(3).low90() > a.high90() / a.low90(),
        "a style nobody has is in more doubt");
    assertEquals(0, fit.ownShare(0));
  }

  @Test
  void theOwnLogWinsAsItGrows() {
    List<Entry> club = rows(8, 1, 1, 3);
    double alone = RateFit.of(log(40, 4, 4, 4)).rate(0).mean();
    double few = beside(log(2, 4, 4, 4), club).rate(0).mean();
    double fewAlone = RateFit.of(log(2, 4, 4, 4)).rate(0).mean();
    RateFit many = beside(log(40, 4, 4, 4), club);
    assertTrue(few < 0.8 * fewAlone, "few trips lean on the club");
    assertEquals(alone, many.rate(0).mean(), 0.12 * alone);
    assertTrue(many.ownShare(0) > 0.6, "own share " + many.ownShare(0));
    assertTrue(beside(log(2, 4, 4, 4), club).ownShare(0) < many.ownShare(0));
  }

  @Test
  void anAnglerWhoLosesThreeTimesAsMuchIsRecognised() {
    RateFit fit = beside(log(8, 3, 3, 9), rows(8, 1, 1, 3));
    // A style he never threw is expected to go three times as fast as the others' too.
    double others = beside(log(0), rows(8, 1, 1, 3)).rate(3).mean();
    assertTrue(fit.rate(3).mean() > 2 * others, fit.rate(3) + " against " + others);
  }

  @Test
  void whatMovesAllRatesIsNotCountedTwice() {
    // Logs that lose half, one or two times as much as a whole: their spread is all in common.
    List<Entry> rows = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      int times = List.of(1, 2, 4).get(i % 3);
      String log = "log " + i;
      for (Entry row : rows(1, times, times, 2 * times)) {
        rows.add(
            new Entry(
                log,
                log,
                row.year(),
                row.key(),
                row.name(),
                row.family(),
                row.familyKey(),
                row.logEstimate(),
                row.logVariance(),
                row.trips(),
                row.hours(),
                row.pieces()));
      }
    }
    var rate = beside(log(0), rows).rate(0);
    double spread = Math.log(rate.high90() / rate.low90()) / (2 * 1.645);
    // ln 2 up or down in two logs of three: a standard deviation of 0.57.
    assertTrue(spread > 0.55 && spread < 0.8, "spread " + spread);
  }

  @Test
  void oneUntrueCommonRateLeavesABlankLogsRatesAsTheyAre() {
    List<Entry> rows = rows(8, 1, 1, 3);
    var before = beside(log(0), rows).rate(0);
    Entry like =
        rows.stream().filter(row -> row.name().equals("common rate")).findFirst().orElseThrow();
    rows.add(
        new Entry(
            "liar", "liar", 2026, like.key(), like.name(), "", "", 4, 1e-6, 100_000, 1e6, 999));
    var after = beside(log(0), rows).rate(0);
    assertEquals(1, after.mean() / before.mean(), 0.1);
    assertEquals(1, after.low90() / before.low90(), 0.15);
    assertEquals(1, after.high90() / before.high90(), 0.15);
  }
}
