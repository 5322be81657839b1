package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.season.Cause;
import sparewell.season.SeasonMaker;
import sparewell.stock.OnHand;

class OffSeasonPlannerTest {
  private final SeasonMaker maker =
      new SeasonMaker()
          .priced("Jig", 1, "6.50")
          .priced("Worm", 8, "4.00")
          .plain("Frog")
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
    OffSeason.Lost alone = OffSeasonPlanner.cost(maker.season(), maker.onHand(), "b");
    assertEquals(8, alone.pieces(), "of that trip");
    assertEquals(0, new BigDecimal("3.00").compareTo(alone.money()));
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
    assertEquals(List.of(), maker.season().events());
  }

  @Test
  void listsLossesByMonthAndCause() {
    maker
        .trip("a", LocalDate.of(2025, 5, 2), 10, "Jig", 2)
        .trip("b", AS_OF, 30, "Jig", 2)
        .loss("a", "Jig", "", 3, Cause.SNAG)
        .loss("a", "Worm", "", 1, Cause.SNAG)
        .loss("a", "Jig", "", 2, Cause.FISH)
        .loss("b", "Jig", "", 0, Cause.OTHER)
        .loss("b", "Jig", "", 1, Cause.FISH);
    OffSeason view =
        OffSeasonPlanner.plan(maker.season(), maker.onHand(), new KnownForecast()).orElseThrow();
    assertEquals(LocalDate.of(2025, 5, 2), view.from());
    assertEquals(13, view.months().size());
    assertEquals(YearMonth.of(2025, 5), view.months().get(0).month());
    assertEquals(Map.of(Cause.SNAG, 4, Cause.FISH, 2), view.months().get(0).pieces());
    assertEquals(Map.of(), view.months().get(1).pieces());
    assertEquals(Map.of(Cause.FISH, 1), view.months().get(12).pieces());
    assertEquals(
        List.of(Cause.SNAG, Cause.FISH),
        view.causes().stream().map(OffSeason.CauseLine::cause).toList(),
        "a cause that cost nothing is left out");
  }

  @Test
  void pricesAreTheItemsThenTheStyles() {
    maker
        .plain("Unpriced")
        .trip("a", AS_OF, 10, "Jig", 2)
        .loss("a", "Jig", "", 2, Cause.SNAG)
        .loss("a", "Jig", "never stocked", 1, Cause.SNAG)
        .loss("a", "Unpriced", "", 4, Cause.SNAG);
    OnHand stocked = maker.onHand();
    OnHand.ItemStock jig = stocked.items().get(0);
    OnHand.ItemStock own =
        new OnHand.ItemStock(
            jig.item(),
            jig.aboard(),
            jig.ashore(),
            jig.carryAtLeast(),
            Optional.of(new BigDecimal("9.00")),
            jig.weightEach());
    OnHand onHand = new OnHand(stocked.holdings(), List.of(own), List.of());
    OffSeason view =
        OffSeasonPlanner.plan(maker.season(), onHand, new KnownForecast()).orElseThrow();
    // Two at the item's own 9.00, one at the style's 6.50.
    assertEquals(0, new BigDecimal("24.50").compareTo(view.total().money()));
    assertEquals(7, view.total().pieces());
    assertEquals(4, view.total().unpricedPieces());
  }

  @Test
  void whatIsToBuyAndHasNoPriceLeavesTheCostOpen() {
    maker.trip("a", AS_OF, 40, "Jig", 2);
    KnownForecast forecast = new KnownForecast().poisson("Frog", 0.2);
    OffSeason view = OffSeasonPlanner.plan(maker.season(), maker.onHand(), forecast).orElseThrow();
    for (OffSeason.StyleLine line : view.styles()) {
      assertEquals(line.style().equals("Frog"), line.cost().isEmpty(), line.style());
    }
  }

  @Test
  void stylesStandByMoneyThenPiecesLostAndOnlyWhereStockedOrLost() {
    maker
        .plain("Neither", "Lost only")
        .trip("a", AS_OF, 10, "Jig", 2)
        .loss("a", "Lost only", "", 9, Cause.SNAG)
        .loss("a", "Frog", "", 2, Cause.SNAG)
        .loss("a", "Worm", "", 8, Cause.SNAG);
    OffSeason view =
        OffSeasonPlanner.plan(maker.season(), maker.onHand(), new KnownForecast()).orElseThrow();
    assertEquals(
        List.of("Worm", "Lost only", "Frog", "Jig"),
        view.styles().stream().map(OffSeason.StyleLine::style).toList());
    assertEquals(Optional.of(BigDecimal.ZERO), view.styles().get(1).cost());
  }
}
