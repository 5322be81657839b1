package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.SeasonMaker.AS_OF;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.season.Cause;

class OffSeasonPlannerTest {
  private final SeasonMaker maker =
      new SeasonMaker()
          .style("Jig")
          .pack(1, "6.50")
          .add()
          .style("Worm")
          .pack(8, "4.00")
          .add()
          .style("Frog")
          .add()
          .aboard("Jig", "", "B", 2)
          .ashore("Jig", "", "T", 1)
          .aboard("Worm", "", "B", 2)
          .aboard("Frog", "", "B", 2);

  @Test
  void countsTwelveMonthsOfLossesInPiecesAndMoney() {
    maker
        .trip("older", AS_OF.minusMonths(13), 9, "Jig", 2)
        .trip("a", AS_OF.minusMonths(11), 10, "Jig", 2)
        .trip("b", AS_OF.minusMonths(2), 30, "Jig", 2)
        .loss("older", "Jig", "", 50, Cause.SNAG)
        .loss("a", "Jig", "", 3, Cause.SNAG)
        .loss("b", "Worm", "", 6, Cause.FISH)
        .loss("b", "Frog", "", 2, Cause.SNAG);
    KnownForecast forecast = new KnownForecast().poisson("Jig", 0.06);
    OffSeason view = OffSeasonPlanner.plan(maker.season(), maker.onHand(), forecast).orElseThrow();
    assertEquals(40, view.afloatHours());
    assertEquals(11, view.total().pieces());
    assertEquals(0, new BigDecimal("22.50").compareTo(view.total().money()));
    assertEquals(2, view.total().unpricedPieces());
    assertEquals(
        List.of("Jig", "Worm", "Frog"),
        view.styles().stream().map(OffSeason.StyleLine::style).toList());
    OffSeason.StyleLine jig = view.styles().get(0);
    assertEquals(2.4, jig.expectedLossPieces(), 1e-12);
    assertEquals(3, jig.onHand());
    // qpois(0.95, 2.4) = 5, R 4.2.2
    assertEquals(5, jig.wanted());
    assertEquals(2, jig.buyPacks());
    assertEquals(0, new BigDecimal("13.00").compareTo(jig.cost().orElseThrow()));
    assertEquals(
        List.of(Cause.FISH, Cause.SNAG),
        view.causes().stream()
            .map(OffSeason.CauseLine::cause)
            .sorted(java.util.Comparator.comparing(Cause::word))
            .toList());
    assertEquals(6, view.causes().get(0).lost().pieces());
    assertEquals(5, view.causes().get(1).lost().pieces());
  }

  @Test
  void isLeftOutWithoutTripsInTheTwelveMonths() {
    maker.trip("older", AS_OF.minusYears(1), 9, "Jig", 2);
    assertTrue(
        OffSeasonPlanner.plan(maker.season(), maker.onHand(), new KnownForecast()).isEmpty());
    assertEquals(Optional.empty(), maker.season().nextEvent());
  }
}
