package sparewell.rates.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Observation;
import sparewell.season.SeasonMaker;

/** Exposures and observations made from a log. */
class SeasonHistoryTest {
  private static final LocalDate NEW_YEAR = LocalDate.of(2025, 1, 1);

  private static SeasonMaker styles() {
    return new SeasonMaker()
        .style("Shad", "Soft", "red")
        .style("Frog", "Top", "black")
        .style("Toad", "Soft", "brown");
  }

  private static FitInput input(SeasonMaker book) {
    return SeasonHistory.of(book.season()).input(NEW_YEAR.plusDays(100), book.halfLifeMonths);
  }

  @Test
  void tripsComeInTimeAndFamiliesAsFirstNamed() {
    SeasonMaker book =
        styles().trip("b", 9, 8, "wood").trip("a", 3, 8, "").trip("c", 9, 8, "grass");
    book.trip("none", 1, 0, "rock");
    SeasonHistory history = SeasonHistory.of(book.season());
    assertEquals(List.of("a", "b", "c"), history.trips().stream().map(t -> t.id()).toList());
    assertEquals(List.of("wood", "grass"), history.covers());
    assertEquals(List.of("Shad", "Frog", "Toad"), history.styles());
    assertEquals(List.of("Soft", "Top"), history.families());
    assertEquals(List.of(0, 1, 0), history.familyOfStyle());
  }

  @Test
  void withoutStyleHoursAllStylesAreOutAllDay() {
    SeasonMaker book = styles().trip("a", 3, 8, "").trip("b", 9, 5, "");
    book.lost("b", "Toad", "brown", 2).lost("b", "Toad", "brown", 1, true);
    SeasonHistory history = SeasonHistory.of(book.season());
    assertEquals(
        List.of(
            new StyleUse(0, 0, 8, 0, false, false),
            new StyleUse(0, 1, 8, 0, false, false),
            new StyleUse(0, 2, 8, 0, false, false),
            new StyleUse(1, 0, 5, 0, false, false),
            new StyleUse(1, 1, 5, 0, false, false),
            new StyleUse(1, 2, 5, 3, true, false)),
        history.uses());
    assertTrue(history.usual().perHourAfloat());
    assertEquals(
        List.of(Finding.of(Code.NO_STYLE_HOURS, Cell.ofSheet("Style hours"))), history.findings());
  }

  /** Shares: Shad (4/8 + 2/4) / 2 = 0.5, Toad (0 + 1/4) / 2 = 0.125, Frog 0. */
  private static SeasonMaker shared() {
    SeasonMaker book = styles().trip("a", 3, 8, "").trip("b", 9, 4, "").trip("c", 12, 10, "");
    return book.thrown("a", "Shad", 4).thrown("b", "Toad", 1).thrown("b", "Shad", 2);
  }

  @Test
  void aTripWithoutStyleHoursTakesTheMeanShares() {
    SeasonHistory history = SeasonHistory.of(shared().lost("c", "Toad", "brown", 1).season());
    assertEquals(
        List.of(
            new StyleUse(0, 0, 4, 0, false, false),
            new StyleUse(1, 0, 2, 0, false, false),
            new StyleUse(1, 2, 1, 0, false, false),
            new StyleUse(2, 0, 5, 0, false, false),
            new StyleUse(2, 2, 1.25, 1, false, false)),
        history.uses());
    assertEquals(0.5, history.usual().of("Shad"));
    assertEquals(0, history.usual().of("Frog"));
    assertFalse(history.usual().perHourAfloat());
    assertEquals(List.of(), history.findings());
  }

  /** Shares without trip b: Shad 4/8, Toad 1/4 of the one trip that has it or none of it. */
  @Test
  void hoursThatCannotBeReadAreTheUsualOnesWhateverWasLost() {
    SeasonMaker book = styles().trip("a", 3, 8, "").trip("b", 9, 6, "").trip("c", 12, 6, "");
    book.thrown("a", "Shad", 4).thrown("a", "Toad", 2).unread("b", "Shad").thrown("b", "Toad", 3);
    book.unread("c", "Shad").lost("b", "Shad", "red", 2);
    SeasonHistory history = SeasonHistory.of(book.season());
    assertEquals(0.5, history.usual().of("Shad"), "as on the trip whose hours are known");
    assertEquals(
        List.of(
            new StyleUse(0, 0, 4, 0, false, false),
            new StyleUse(0, 2, 2, 0, false, false),
            new StyleUse(1, 0, 3, 2, false, true),
            new StyleUse(1, 2, 3, 0, false, false),
            new StyleUse(2, 0, 3, 0, false, true)),
        history.uses());
    assertEquals(
        List.of(
            Finding.of(
                Code.HOURS_UNREAD,
                new Cell("Style hours", 4, 3),
                "Shad",
                "b",
                "3.0",
                new Cell("Losses", 2, 0, "Lost")),
            Finding.of(
                Code.HOURS_UNREAD, new Cell("Style hours", 6, 3), "Shad", "c", "3.0", "none")),
        history.findings());
  }

  @Test
  void aLossWithoutHoursTakesTheUsualShareAndIsSaid() {
    SeasonMaker book = shared();
    book.lost("a", "Toad", "brown", 2).lost("c", "Frog", "black", 1).lost("b", "Frog", "black", 0);
    book.lost("unknown", "Shad", "red", 3).lost("a", "Nobody", "red", 3);
    SeasonHistory history = SeasonHistory.of(book.season());
    // Frog was never thrown: it takes the mean of the shares there are, (0.5 + 0.125) / 2.
    assertEquals(
        List.of(
            new StyleUse(0, 0, 4, 0, false, false),
            new StyleUse(0, 2, 1, 2, false, true),
            new StyleUse(1, 0, 2, 0, false, false),
            new StyleUse(1, 2, 1, 0, false, false),
            new StyleUse(2, 0, 5, 0, false, false),
            new StyleUse(2, 1, 3.125, 1, false, true),
            new StyleUse(2, 2, 1.25, 0, false, false)),
        history.uses());
    assertEquals(
        List.of(
            Finding.of(
                Code.LOSS_WITHOUT_STYLE_HOURS,
                new Cell("Losses", 2, 0, "Style"),
                "Toad",
                "a",
                "1.0"),
            Finding.of(
                Code.LOSS_WITHOUT_SHARE, new Cell("Losses", 3, 0, "Style"), "Frog", "c", "3.1")),
        history.findings());
  }

  @Test
  void aStyleLostButNeverInStyleHoursGoesOnBeingThrown() {
    SeasonMaker book = shared().trip("d", 15, 6, "").lost("c", "Frog", "black", 2);
    SeasonHistory history = SeasonHistory.of(book.season());
    // The mean of the others' shares, (0.5 + 0.125) / 2, on every trip without style hours.
    assertEquals(0.3125, history.usual().of("Frog"));
    assertEquals(
        List.of(
            new StyleUse(2, 1, 3.125, 2, false, true), new StyleUse(3, 1, 1.875, 0, false, false)),
        history.uses().stream().filter(use -> use.style() == 1).toList());
  }

  @Test
  void aRowThatNothingWasLostGuessesNoHours() {
    SeasonMaker book = shared().trip("d", 15, 6, "").lost("c", "Frog", "black", 0);
    SeasonHistory history = SeasonHistory.of(book.season());
    assertEquals(0, history.usual().of("Frog"));
    assertTrue(history.uses().stream().noneMatch(use -> use.style() == 1), history.toString());
  }

  @Test
  void aStyleThatRanOutWithoutALossWasThrownToo() {
    SeasonMaker book = shared().lost("a", "Toad", "brown", 0, true);
    assertEquals(
        new StyleUse(0, 2, 1, 0, true, true), SeasonHistory.of(book.season()).uses().get(1));
  }

  @Test
  void noTripsAreSaid() {
    SeasonHistory history = SeasonHistory.of(styles().season());
    assertEquals(
        List.of(Finding.of(Code.NO_TRIPS_TO_FIT, Cell.ofSheet("Trips"))), history.findings());
    assertEquals(1, history.usual().of("Frog"));
    assertEquals(1, history.usual().ofAny());
  }

  @Test
  void observationsCarryWhatTheTripWasLike() {
    SeasonMaker book = styles().trip("a", 3, 2, 8, "").trip("b", 9, 1, 4, "grass");
    book.thrown("a", "Shad", 4).thrown("b", "Toad", 1).lost("b", "Toad", "brown", 3, true);
    FitInput input = input(book);
    assertEquals(
        List.of(
            new Observation(0, 0, 4, 2, Observation.MIX, 0, false, 1),
            new Observation(2, 1, 1, 1, 0, 3, true, 1)),
        input.observations());
    assertEquals(1, input.covers());
    assertEquals(2, input.families());
    assertEquals(3, input.styles());
    assertEquals(List.of(0, 1, 0), input.familyOfStyle());
    assertEquals(0, input(styles()).covers());
  }

  @Test
  void aTripWeighsHalfAfterAHalfLife() {
    SeasonMaker book =
        styles().trip("old", 0, 8, "").trip("new", 100, 8, "").trip("next", 130, 8, "");
    for (String trip : List.of("old", "new", "next")) {
      book.thrown(trip, "Shad", 1);
    }
    // 100 days are 100 / 30.4375 months.
    book.halfLifeMonths = OptionalDouble.of(100 / 30.4375);
    assertEquals(0.5, input(book).observations().get(0).weight(), 1e-12);
    assertEquals(1, input(book).observations().get(1).weight());
    assertEquals(1, input(book).observations().get(2).weight(), "of a trip to come");
    // After 20 half-lives a trip weighs less than a millionth.
    book.halfLifeMonths = OptionalDouble.of(5 / 30.4375);
    assertEquals(2, input(book).observations().size());
    book.halfLifeMonths = OptionalDouble.of(100 / 30.4375 / 19);
    assertEquals(3, input(book).observations().size());
  }

  @Test
  void aCoverWhoseTripsLeftNoExposureIsNotCounted() {
    SeasonMaker book = styles().trip("a", 1, 8, "wood").trip("b", 2, 8, "rock");
    book.thrown("a", "Shad", 1).thrown("b", "Nobody", 1);
    assertEquals(List.of("wood", "rock"), SeasonHistory.of(book.season()).covers());
    assertEquals(1, input(book).covers());
  }
}
