package sparewell.rates.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.rates.fit.RateFit;
import sparewell.rates.history.SeasonHistory;
import sparewell.rates.history.TripLog;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;

/** The replay of a history, trip by trip. */
class ReplayTest {
  private static final int TRIPS = 12;

  /** Trips of a history that have style hours. */
  private enum Logged {
    ALL,
    EVERY_OTHER,
    NONE
  }

  private static SeasonMaker book(Logged logged) {
    SeasonMaker book =
        new SeasonMaker()
            .style("Shad", "Soft", "red", "blue")
            .style("Toad", "Soft", "brown")
            .style("Frog", "Top", "black");
    Random random = new Random(3);
    for (int t = 0; t < TRIPS; t++) {
      String id = "T" + t;
      book.trip(id, 10 * t, 1 + t % 2, 8, t % 3 == 0 ? "" : t % 2 == 0 ? "wood" : "grass");
      if (logged == Logged.ALL || logged == Logged.EVERY_OTHER && t % 2 == 1) {
        book.thrown(id, "Shad", 2).thrown(id, "Toad", 4 - t % 3);
      }
      if (random.nextInt(3) > 0) {
        book.lost(id, "Shad", random.nextInt(3) > 0 ? "red" : "blue", 1 + t % 2 * 2);
      }
      if (t % 4 == 1) {
        book.lost(id, "Toad", "brown", 1, t == 9);
      }
    }
    return book;
  }

  /** Later trips unlike all before: other hours, shares, covers and losses. */
  private static void append(SeasonMaker book, boolean namesAll) {
    for (int t = TRIPS; t < TRIPS + 9; t++) {
      String id = "T" + t;
      book.trip(id, 10 * t, 14, t % 2 == 0 ? "rock" : "wood").thrown(id, "Shad", 0.1);
      if (namesAll) {
        book.thrown(id, "Toad", 1).thrown(id, "Frog", 12).lost(id, "Frog", "black", 30);
      }
      book.lost(id, "Shad", "red", 25).lost(id, "Toad", "brown", 40);
    }
  }

  /** Forecasts of the first trips, in words that differ with the least change. */
  private static List<String> foreseen(Season season) {
    List<String> all = new ArrayList<>();
    Replay replay = new Replay(season);
    while (replay.hasNext()) {
      for (Foreseen one : replay.next()) {
        if (one.use().trip() < TRIPS) {
          all.add(
              one.use()
                  + " "
                  + one.chanceProbability()
                  + " "
                  + one.losses().mean()
                  + " "
                  + one.losses().probabilityOf(2)
                  + " "
                  + one.byRawRate().mean());
        }
      }
    }
    return all;
  }

  @ParameterizedTest
  @EnumSource
  void laterTripsChangeNothingForeseenBefore(Logged logged) {
    List<String> before = foreseen(book(logged).season());
    assertTrue(before.size() >= 2 * (TRIPS - Replay.KNOWN_FIRST), before.toString());
    for (boolean namesAll : new boolean[] {true, false}) {
      SeasonMaker longer = book(logged);
      append(longer, namesAll);
      assertEquals(before, foreseen(longer.season()));
    }
    SeasonMaker faded = book(logged);
    faded.halfLifeMonths = OptionalDouble.of(4);
    List<String> fading = foreseen(faded.season());
    append(faded, true);
    assertEquals(fading, foreseen(faded.season()));
  }

  @Test
  void aTripIsLearntOnlyAfterItWasForeseen() {
    SeasonMaker book = book(Logged.ALL);
    List<String> before = foreseen(book.season());
    // Another loss on the seventh trip: foreseen as before, but not what comes after.
    book.lost("T6", "Shad", "red", 5);
    List<String> after = foreseen(book.season());
    int shad = 2 * (6 - Replay.KNOWN_FIRST);
    assertEquals(before.subList(0, shad), after.subList(0, shad));
    assertEquals(
        before.get(shad).replaceAll(".*lostPieces=\\d+", ""),
        after.get(shad).replaceAll(".*lostPieces=\\d+", ""));
    assertEquals(before.get(shad + 1), after.get(shad + 1));
    // The raw average and the weights of the style learn at once, other styles through the draws.
    for (int i = shad + 2; i < before.size(); i++) {
      assertFalse(before.get(i).equals(after.get(i)), before.get(i));
    }
  }

  @Test
  void fitsAnewWhenTwiceAsMuchIsKnown() {
    List<Integer> at = new ArrayList<>();
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red");
    for (int t = 0; t < 90; t++) {
      book.trip("T" + t, t, 8, "").thrown("T" + t, "Shad", 2);
    }
    Replay replay = new Replay(book.season());
    for (int t = Replay.KNOWN_FIRST; replay.hasNext(); t++) {
      int fits = replay.fits();
      assertEquals(t, replay.next().get(0).use().trip());
      if (replay.fits() > fits) {
        at.add(t);
      }
    }
    assertEquals(90, replay.trips());
    assertEquals(List.of(4, 8, 16, 32, 64), at);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "wood", "grass"})
  void aForecastIsNearThatOfAWholeFit(String cover) {
    SeasonMaker book = book(Logged.ALL);
    book.trip("late", 200, 2, 9, cover).thrown("late", "Toad", 7);
    Season season = book.season();
    SeasonHistory history = SeasonHistory.of(season);
    // The replay fitted last when 8 trips were known, and learnt 4 more.
    SeasonHistory known =
        SeasonHistory.of(season, new TripLog(season), history.trips().subList(0, TRIPS));
    RateFit fit = RateFit.of(known.input(SeasonMaker.AS_OF, OptionalDouble.empty()));
    RateFit.Term term = new RateFit.Term(7, 2, known.covers().indexOf(cover));
    Foreseen last = last(book);
    assertEquals(7, last.use().hours());
    double mean = fit.losses(1, List.of(term)).mean();
    assertEquals(mean, last.losses().mean(), 0.1 * mean);
    for (int n = 0; n < 4; n++) {
      assertEquals(fit.losses(1, List.of(term)).atMost(n), last.losses().atMost(n), 0.03, "n " + n);
    }
  }

  @Test
  void theRawAverageKnowsTheTripsBeforeTheFirstForecast() {
    SeasonMaker book =
        new SeasonMaker().style("Shad", "Soft", "red").style("Toad", "Soft", "brown");
    for (int t = 0; t < 5; t++) {
      book.trip("T" + t, t, 8, "").thrown("T" + t, "Shad", 2).lost("T" + t, "Shad", "red", t);
    }
    book.thrown("T4", "Toad", 3).lost("T1", "Toad", "brown", 50); // without hours: nobody's plan
    List<Foreseen> first = new Replay(book.season()).next();
    assertEquals(2 * 6 / 8.0, first.get(0).byRawRate().mean(), 1e-12);
    // A style not yet thrown has the raw rate of all.
    assertEquals(3 * 6 / 8.0, first.get(1).byRawRate().mean(), 1e-12);
  }

  @Test
  void theRawAverageLearnsEachTripAfterItWasForeseen() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red");
    for (int t = 0; t < 7; t++) {
      book.trip("T" + t, t, 8, "").thrown("T" + t, "Shad", 2).lost("T" + t, "Shad", "red", t);
    }
    Replay replay = new Replay(book.season());
    List<Double> means = new ArrayList<>();
    while (replay.hasNext()) {
      means.add(replay.next().get(0).byRawRate().mean());
    }
    // 6 pieces in 8 hours, then 10 in 10, then 15 in 12; two hours ahead.
    assertEquals(List.of(1.5, 2.0, 2.5), means);
  }

  @Test
  void theChanceWantedIsTheStylesUnlessTheCommandLineSetsIt() {
    for (boolean set : new boolean[] {false, true}) {
      SeasonMaker book = new SeasonMaker();
      book.style("Shad", "Soft", "red").wanted(0.8).style("Toad", "Soft", "brown");
      book.chanceFromCommandLine = set;
      for (int t = 0; t < 5; t++) {
        book.trip("T" + t, t, 8, "").thrown("T" + t, "Shad", 2).thrown("T" + t, "Toad", 2);
      }
      List<Foreseen> foreseen = new Replay(book.season()).next();
      assertEquals(set ? 0.95 : 0.8, foreseen.get(0).chanceProbability());
      assertEquals(0.95, foreseen.get(1).chanceProbability());
    }
  }

  @Test
  void aCoverNeverLoggedIsForeseenWithItsPriorOnly() {
    SeasonMaker known = book(Logged.ALL);
    SeasonMaker fresh = book(Logged.ALL);
    SeasonMaker none = book(Logged.ALL);
    known.trip("late", 200, 8, "wood").thrown("late", "Shad", 20);
    fresh.trip("late", 200, 8, "rock").thrown("late", "Shad", 20);
    none.trip("late", 200, 8, "").thrown("late", "Shad", 20);
    // Wider than with a known cover, and the same mean as with none logged.
    double mean = last(none).losses().mean();
    assertEquals(mean, last(fresh).losses().mean(), 0.08 * mean); // 24 draws
    assertTrue(last(fresh).losses().quantile(0.99) > last(none).losses().quantile(0.99));
    assertFalse(last(known).losses().mean() == last(none).losses().mean());
  }

  private static Foreseen last(SeasonMaker book) {
    Foreseen last = null;
    for (Replay replay = new Replay(book.season()); replay.hasNext(); ) {
      last = replay.next().get(0);
    }
    return last;
  }

  @Test
  void aLossThatNoHoursExplainIsNobodysForecast() {
    SeasonMaker book = book(Logged.ALL);
    book.trip("late", 200, 8, "wood").thrown("late", "Toad", 1).lost("late", "Shad", "red", 9);
    Replay replay = new Replay(book.season());
    List<Foreseen> last = List.of();
    while (replay.hasNext()) {
      last = replay.next();
    }
    assertEquals(List.of(1), last.stream().map(one -> one.use().style()).toList());
  }
}
