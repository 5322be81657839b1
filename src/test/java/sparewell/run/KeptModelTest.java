package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;
import sparewell.rates.LossModel;
import sparewell.rates.record.RunningRecord;
import sparewell.rates.record.TrackRecord;
import sparewell.season.Season;
import sparewell.spares.SeasonPlan;
import sparewell.spares.SeasonPlanner;
import sparewell.stock.OnHandCalculator;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

/** A kept model is that of the same log, and says what a new one says. */
@Isolated("the program keeps one model, whoever analyses")
class KeptModelTest {
  private static Season season(String stock, String lost) {
    return season(stock, lost, "");
  }

  private static Season season(String stock, String lost, String trips) {
    return Reading.of(
            Books.empty()
                .with("Styles", "Style|Family|Pack price\nLure|Lures|5\nJig|Jigs|3")
                .with("Boxes", "Box|Compartment\nAlpha|Bow")
                .with("Compartments", "Compartment|From transom\nBow|150")
                .with("Settings", "Setting|Value\nAs of|2026-03-15")
                .with(
                    "Trips",
                    "Trip|Date|Hours\nA|2026-01-01|8\nB|2026-02-01|8\nC|2026-02-08|6\n"
                        + "D|2026-02-20|7\nE|2026-03-01|8\nF|2026-03-08|9"
                        + trips)
                .with("Style hours", "Trip|Style|Hours\nA|Lure|4\nB|Jig|5\nC|Lure|3\nF|Lure|4")
                .with("Losses", "Trip|Style|Lost\nA|Lure|2\nB|Jig|3\nF|Lure|" + lost)
                .with(
                    "Events",
                    "Event|Date|Hours|Days\nF|2026-03-08|9|1\nOpen|2026-04-01|16|2\nCup|2026-05-01|8|1")
                .with(
                    "Stock", "Style|Colour|Box|Count\nLure|Red|Alpha|" + stock + "\nJig||Alpha|3"))
        .season();
  }

  private static KeptModel kept(Season season) {
    return new KeptModel(
        season,
        log -> {
          TrackRecord record = TrackRecord.of(log);
          return () -> record;
        });
  }

  private static SeasonPlan plan(Season season, LossModel model) {
    return SeasonPlanner.plan(season, OnHandCalculator.of(season), model, java.util.List.of());
  }

  @Test
  void isTakenAgainWhileTheLogIsTheSame() {
    Season before = season("3", "2");
    KeptModel first = kept(before);
    LossModel model = first.model(Optional.empty());
    plan(before, model);
    Season recounted = season("2", "2");
    KeptModel second = kept(recounted);
    assertSame(model, second.model(Optional.empty()));
    assertSame(first.record(), second.record());
    assertEquals(TrackRecord.of(recounted), second.record().get());
    assertEquals(plan(recounted, LossModel.fit(recounted)), plan(recounted, model));
    Season another = season("2", "4");
    assertNotSame(model, kept(another).model(Optional.empty()));
    assertNotSame(model, kept(recounted).model(Optional.empty()), "the last one only");
  }

  @Test
  void goesOnWithTheTrackRecordWhereTripsAreAdded() {
    for (String change : List.of("", "\nG|2026-03-10|8", "\nG|2026-03-10|8\nH|2026-03-11|5")) {
      for (String lost : List.of("2", "5")) { // of the sixth trip: another past
        Season grown = season("3", lost, change);
        assertEquals(TrackRecord.of(grown), KeptModel.record(grown), change + lost);
      }
    }
    RunningRecord running = new RunningRecord(season("3", "2", ""));
    running.upTo(season("3", "2", ""));
    assertTrue(running.goesOnTo(season("9", "2", "\nG|2026-03-10|8")));
    assertFalse(running.goesOnTo(season("3", "4", "\nG|2026-03-10|8")), "another loss before");
    assertFalse(running.goesOnTo(season("3", "2", "\nG|2026-02-10|8")), "a trip in between");
    assertEquals(
        TrackRecord.of(season("3", "2", "\nG|2026-03-10|8")),
        running.upTo(season("3", "2", "\nG|2026-03-10|8")));
  }
}
