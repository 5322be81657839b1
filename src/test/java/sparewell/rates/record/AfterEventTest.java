package sparewell.rates.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import sparewell.season.Cause;
import sparewell.season.SeasonMaker;
import sparewell.spares.KnownForecast;

class AfterEventTest {
  /** Poisson(2): ppois(6, 2, lower.tail = FALSE) + dpois(6, 2) = 0.0165636, twice; R 4.2.2. */
  @Test
  void bothTailsCount() {
    assertEquals(0.0331272, AfterEvent.twoSided(KnownForecast.poisson(2), 6), 1e-7);
    assertEquals(2 * Math.exp(-2), AfterEvent.twoSided(KnownForecast.poisson(2), 0), 1e-9);
    assertEquals(1, AfterEvent.twoSided(KnownForecast.poisson(2), 2), 1e-12);
  }

  @Test
  void theLastEventIsForeseenFromTheTripsBeforeIt() {
    SeasonMaker maker = new SeasonMaker().plain("Jig").aboard("Jig", "", "J1", 9);
    LocalDate first = SeasonMaker.AS_OF.minusDays(60);
    for (int t = 0; t < 6; t++) {
      maker.trip("t" + t, first.plusDays(5L * t), 8, "Jig", 4);
      maker.loss("t" + t, "Jig", "", t == 5 ? 20 : 1, Cause.SNAG);
    }
    maker.event("Cup", first.plusDays(25), 8, 1).event("Later", SeasonMaker.AS_OF, 8, 1);
    AfterEvent after = TrackRecord.of(maker.season()).lastEvent().orElseThrow();
    assertEquals("t5", after.trip().id());
    AfterEvent.StyleResult jig = after.styles().get(0);
    assertEquals(20, jig.lostPieces());
    assertTrue(jig.expectedPieces() < 4, "one a trip was lost before");
    assertTrue(jig.unusualProbability() < 0.01, "twenty is unusual");
    maker.asOf = first.plusDays(20);
    assertTrue(AfterEvent.last(maker.season()).isEmpty(), "not fished yet");
  }

  @Test
  void ofTheEventsBehindThatWithATripOfItsDayOrNameIsTheLast() {
    LocalDate day = SeasonMaker.AS_OF.minusDays(40);
    SeasonMaker maker = new SeasonMaker().plain("Jig").aboard("Jig", "", "J1", 9);
    maker.trip("t0", day, 8, "Jig", 4).trip("monday pairs", day.plusDays(9), 8, "Jig", 4);
    maker.event("Cup", day, 8, 1).event("Missed", day.plusDays(20), 8, 1);
    assertEquals("Cup", AfterEvent.last(maker.season()).orElseThrow().name());
    maker.event("Monday Pairs", day.plusDays(8), 8, 1); // logged under the day after
    assertEquals("Monday Pairs", AfterEvent.last(maker.season()).orElseThrow().name());
  }
}
