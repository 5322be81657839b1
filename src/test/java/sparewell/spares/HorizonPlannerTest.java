package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.rates.Exposure;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;

class HorizonPlannerTest {
  private static final KnownForecast FORECAST =
      new KnownForecast().poisson("Jig", 0.1).share("Jig", 0.25).poisson("Worm", 0.2);

  private final SeasonMaker maker =
      new SeasonMaker()
          .plain("Jig", "Worm")
          .aboard("Jig", "black", "J1", 2)
          .aboard("Jig", "Blue", "J1", 2)
          .aboard("Worm", "green", "W1", 9);

  private Horizon plan(KnownForecast forecast) {
    return HorizonPlanner.plan(maker.season(), maker.onHand(), forecast);
  }

  private static List<String> names(Horizon horizon) {
    return horizon.events().stream().map(Event::name).toList();
  }

  @Test
  void usesPlanningHoursByMeanShareWithoutAnEvent() {
    maker.event("Past", AS_OF.minusDays(1), 8, 1);
    Horizon horizon = plan(FORECAST);
    assertTrue(horizon.events().isEmpty());
    assertEquals(24 * 0.25, horizon.use("Jig").hours());
    assertEquals(3, horizon.use("Jig").stretches().get(0).days());
    assertTrue(horizon.words().contains("24 planning hours"), horizon.words());
  }

  @Test
  void takesTheNextEventOnTheDayOfAnalysis() {
    maker.event("Later", AS_OF.plusDays(9), 8, 1).event("Today", AS_OF, 8, 1);
    Horizon horizon = plan(FORECAST);
    assertEquals(List.of("Today"), names(horizon));
    assertEquals(8 * 0.25, horizon.use("Jig").hours());
  }

  /** The card is typed in on the evening of the event: what comes next is then the next event. */
  @Test
  void anEventOfTheDayOfAnalysisIsOverOnceItsTripIsLogged() {
    maker.event("Later", AS_OF.plusDays(9), 8, 1).event("Today", AS_OF, 8, 1);
    maker.event("Tonight", AS_OF, 3, 0.5).event("Two days", AS_OF, 16, 2);
    maker.trip("today", AS_OF, 8, "Jig", 4);
    assertEquals(List.of("Tonight", "Two days"), names(plan(FORECAST)));
    maker.trip("x", AS_OF, 8, "Jig", 4);
    assertEquals(List.of("Two days"), names(plan(FORECAST)));
  }

  @Test
  void joinsEventsWithoutAFreeDayBetweenThem() {
    maker
        .event("A", AS_OF.plusDays(3), 16, 2)
        .event("B", AS_OF.plusDays(5), 8, 1)
        .event("C", AS_OF.plusDays(7), 8, 1);
    Horizon horizon = plan(FORECAST);
    assertEquals(List.of("A", "B"), names(horizon));
    assertEquals(24 * 0.25, horizon.use("Jig").hours());
    assertTrue(horizon.words().contains("A (2026-05-04"), horizon.words());
    assertTrue(horizon.words().startsWith("Planned together"), horizon.words());
  }

  @Test
  void aLongEventCoversShorterOnesWithinIt() {
    maker
        .event("Week", AS_OF, 50, 6)
        .event("Evening", AS_OF.plusDays(1), 3, 0.5)
        .event("After", AS_OF.plusDays(6), 8, 1);
    assertEquals(List.of("Week", "Evening", "After"), names(plan(FORECAST)));
  }

  @Test
  void aPlanGivesHoursToPlannedStylesAndColoursOnly() {
    maker.event("Cup", AS_OF.plusDays(2), 8, 1, line("Jig", 10, "blue"));
    Horizon horizon = plan(FORECAST);
    assertEquals(10, horizon.use("Jig").hours(), "plan hours may exceed event hours");
    assertEquals(0, horizon.use("Worm").hours());
    List<Exposure> stretches = horizon.use("Jig").stretches();
    assertEquals(1, stretches.size());
    assertEquals(List.of(new ItemId("Jig", "", "Blue")), stretches.get(0).among());
    assertTrue(horizon.findings().isEmpty());
  }

  @Test
  void hoursAfloatStandForEveryStylePlannedOrNot() {
    KnownForecast forecast = new KnownForecast().poisson("Jig", 0.1).hoursAfloat();
    assertEquals(24, plan(forecast).use("Worm").hours());
    maker.event("Cup", AS_OF.plusDays(2), 8, 1, line("Jig", 2));
    Horizon horizon = plan(forecast);
    assertEquals(8, horizon.use("Jig").hours());
    assertEquals(0, horizon.use("Worm").hours());
    assertTrue(horizon.words().contains("No trip has hours by style"), horizon.words());
  }

  @Test
  void saysWhatAPlanNamesThatIsNotInStock() {
    maker
        .plain("Frog")
        .event(
            "Cup",
            AS_OF.plusDays(2),
            8,
            1,
            line("Jig", 2, "red"),
            line("Frog", 3),
            line("Worm", 1));
    Horizon horizon = plan(FORECAST);
    assertEquals(
        List.of(Code.PLAN_COLOUR_NOT_IN_STOCK, Code.PLAN_STYLE_NOT_IN_STOCK),
        horizon.findings().stream().map(finding -> finding.code()).toList());
    assertEquals(2, horizon.use("Jig").stretches().get(0).among().size());
    assertFalse(horizon.findings().get(0).done().contains("%"));
  }

  @Test
  void saysWhichEventsHaveNoPlan() {
    maker
        .event("Cup", AS_OF.plusDays(2), 8, 1, line("Jig", 2))
        .event("Open", AS_OF.plusDays(3), 7.5, 1);
    Horizon horizon = plan(FORECAST);
    assertTrue(horizon.use("Jig").inPlan());
    assertTrue(horizon.words().contains("Cup (2026-05-03, 8 hours), "), horizon.words());
    assertTrue(
        horizon.words().contains("Open (2026-05-04, 7.5 hours, no plan: every style"),
        horizon.words());
    Horizon open =
        HorizonPlanner.single(maker.season(), maker.onHand(), FORECAST, horizon.events().get(1));
    assertFalse(open.use("Jig").inPlan());
    assertEquals(7.5 * 0.25, open.use("Jig").hours());
  }

  @Test
  void aStyleNeverThrownIsNotUsed() {
    KnownForecast forecast = new KnownForecast().poisson("Jig", 0.1).share("Jig", 0.25);
    assertTrue(plan(forecast).use("Worm").stretches().isEmpty());
    maker.event("Cup", AS_OF.plusDays(2), 8, 1, line("Jig", 0));
    Horizon.Use jig = plan(forecast).use("Jig");
    assertTrue(jig.inPlan());
    assertEquals(0, jig.hours(), "planned for no time at all");
  }

  @Test
  void anUnknownColourLeavesTheOthersOrAll() {
    maker.event(
        "Cup", AS_OF.plusDays(2), 8, 1, line("Jig", 2, "red", " BLUE "), line("Worm", 2, "pink"));
    Horizon horizon = plan(FORECAST);
    assertEquals(
        List.of("planned with the other colours named", "planned as if all its colours were used"),
        horizon.findings().stream().map(finding -> finding.details().get(3)).toList());
    assertEquals(
        List.of(new ItemId("Jig", "", "Blue")), horizon.use("Jig").stretches().get(0).among());
    assertEquals(
        List.of(new ItemId("Worm", "", "green")), horizon.use("Worm").stretches().get(0).among());
  }
}
