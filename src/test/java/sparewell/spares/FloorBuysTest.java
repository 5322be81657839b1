package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.BuyPlannerTest.list;
import static sparewell.spares.BuyPlannerTest.order;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.season.SeasonMaker;

/** Money for floors and for packs without a price, after what saves shortage. */
class FloorBuysTest {
  @Test
  void whatOnlyFillsFloorsComesLast() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Rod")
            .pack(1, "80.00")
            .atOnce(2, 1)
            .priced("Jig", 1, "1.00")
            .aboard("Rod", "", "B", 1)
            .aboard("Jig", "", "B", 0);
    KnownForecast forecast = new KnownForecast().poisson("Jig", 2.0 / 24);
    BuyList list = list(maker, forecast);
    assertEquals(List.of("5 Jig", "1 Rod"), order(list));
    assertEquals(List.of(list.lines().get(0)), list.part(false));
    assertEquals(List.of(list.lines().get(1)), list.part(true));
    assertEquals(Optional.of(true), list.lines().get(1).withinBudget());
    assertEquals("5.00", list.needed().money().toPlainString());
    assertEquals("85.00", list.within().money().toPlainString());
    assertEquals(
        list.needed(), list.curve().get(list.curve().size() - 1), "beyond it the curve is flat");
    // ppois(5, 2) = 0.9834364, R 4.2.2: the Jigs alone do it, the Rod adds nothing.
    assertEquals(0.9834364, list.needed().nothingRunsOutProbability().getAsDouble(), 1e-7);
    assertEquals(0.1353353, list.without().nothingRunsOutProbability().getAsDouble(), 1e-7);
    BuyList poor = list(maker.budget("50"), forecast);
    assertEquals(List.of(true, false), poor.lines().stream().map(BuyList.Line::bought).toList());
    assertEquals(Optional.of(false), poor.part(true).get(0).withinBudget());
    assertEquals(new BigDecimal("5.00"), poor.spent());
  }

  @Test
  void aFloorWithoutAPriceCountsOnlyInWhatAllLinesLeadTo() {
    SeasonMaker maker = new SeasonMaker().style("Net").floor(2).aboard("Net", "", "B", 0);
    BuyList list = list(maker, new KnownForecast().poisson("Net", 0.002 / 24));
    assertTrue(list.part(true).get(0).bought());
    assertEquals(0.002, list.needed().shortagePieces(), 1e-9);
    assertEquals(0, list.within().shortagePieces(), 1e-8);
  }

  @Test
  void unknownPricesStandApartAndAreNeverFree() {
    SeasonMaker maker =
        new SeasonMaker()
            .budget("100")
            .priced("Jig", 1, "1.00")
            .style("Frog")
            .floor(2)
            .aboard("Frog", "", "B", 0)
            .aboard("Jig", "", "B", 0);
    BuyList list =
        list(maker, new KnownForecast().poisson("Jig", 0.1 / 24).poisson("Frog", 9.0 / 24));
    BuyList.Line last = list.lines().get(list.lines().size() - 1);
    assertEquals("Frog", last.item().style());
    assertEquals(Optional.empty(), last.cost());
    assertEquals(Optional.empty(), last.cumulativeCost());
    assertEquals(Optional.empty(), last.withinBudget());
    assertFalse(last.bought());
    assertEquals(Code.PRICE_NOT_KNOWN, list.findings().get(0).code());
    assertTrue(list.within().shortagePieces() > 8, "not bought, so still short");
  }

  /** Money goes to what is needed first; more money never does worse in it, floors or not. */
  @Test
  void floorsNeverTakeMoneyFromWhatIsNeeded() {
    Random random = new Random(13);
    for (int round = 0; round < 40; round++) {
      SeasonMaker maker = new SeasonMaker().carryAtLeast(3);
      KnownForecast forecast = new KnownForecast();
      for (int s = 0; s < 5; s++) {
        String style = "S" + s;
        maker
            .style(style)
            .pack(1 + random.nextInt(3), (1 + random.nextInt(30)) + ".00")
            .aboard(style, "a", "B", random.nextInt(4));
        forecast.negBin(
            style,
            (1e-9 + random.nextInt(3)) * random.nextDouble() * 0.1,
            0.6 + random.nextDouble());
      }
      double before = 0;
      for (int budget = 0; budget <= 300; budget += 10) {
        BuyList list = list(maker.budget(budget + ""), forecast);
        double saved =
            list.part(false).stream()
                .filter(BuyList.Line::bought)
                .mapToDouble(line -> line.shortageBeforePieces() - line.shortageAfterPieces())
                .sum();
        assertTrue(saved >= before - 1e-9);
        before = saved;
        list.part(true).forEach(line -> assertTrue(line.shortageBeforePieces() < 0.005));
      }
    }
  }

  @Test
  void floorsGetOnlyWhatIsLeft() {
    SeasonMaker maker =
        new SeasonMaker()
            .style("Rod")
            .pack(1, "30.00")
            .floor(1)
            .priced("Jig", 1, "10.00")
            .aboard("Rod", "", "B", 0)
            .aboard("Jig", "", "B", 0)
            .budget("55");
    BuyList list = list(maker, new KnownForecast().poisson("Jig", 2.0 / 24));
    assertEquals(List.of("5 Jig", "1 Rod"), order(list));
    assertEquals(new BigDecimal("50.00"), list.spent());
  }

  @Test
  void unpricedItemsStandLastByWeightedShortage() {
    // Expected short: Frog 2, Toad 1 x importance 3, Newt has all it needs.
    SeasonMaker maker = new SeasonMaker();
    maker.priced("Jig", 1, "1.00");
    maker.plain("Frog");
    maker.style("Toad").importance(3).floor(1);
    maker.plain("Newt");
    maker
        .aboard("Jig", "", "B", 0)
        .aboard("Frog", "green", "B", 0)
        .aboard("Frog", "brown", "B", 0)
        .aboard("Toad", "", "B", 0)
        .aboard("Newt", "", "B", 9);
    KnownForecast forecast =
        new KnownForecast()
            .poisson("Jig", 0.1 / 24)
            .poisson("Frog", 4.0 / 24)
            .poisson("Toad", 1.0 / 24)
            .poisson("Newt", 0.1 / 24);
    BuyList list = list(maker, forecast);
    assertEquals(
        List.of("1 Jig", "2 Toad", "3 Frog", "4 Frog"),
        list.lines().stream().map(line -> line.rank() + " " + line.item().style()).toList());
    assertTrue(list.lines().stream().allMatch(BuyList.Line::bought), "no budget is set");
    assertEquals(
        List.of(false, false, false, false),
        list.lines().stream().map(BuyList.Line::fills).toList());
    assertTrue(list.needed().shortagePieces() < 0.2, "what has no price is bought too");
    assertEquals(list.needed().shortagePieces(), list.within().shortagePieces());
    assertEquals(
        List.of("Frog", "Toad"),
        list.findings().stream().map(finding -> finding.details().get(0)).toList(),
        "each style once");
    assertEquals("1.00", list.wanted().toPlainString());
  }

  @Test
  void amongFloorsThatSaveNothingTheImportantThenTheEmptierItemComesFirst() {
    SeasonMaker maker = new SeasonMaker().carryAtLeast(2);
    maker.priced("Net", 1, "9.00");
    maker.priced("Rod", 1, "80.00");
    maker.style("Vest").pack(1, "70.00").importance(5);
    maker.style("Jig").pack(1, "1.00").importance(0.1);
    maker
        .aboard("Net", "", "B", 1)
        .aboard("Rod", "", "B", 0)
        .aboard("Vest", "", "B", 1)
        .aboard("Jig", "", "B", 1);
    BuyList list = list(maker, new KnownForecast().poisson("Jig", 0.2 / 24));
    assertEquals(List.of("1 Jig", "1 Vest", "2 Rod", "1 Net"), order(list), "what is needed leads");
  }

  @Test
  void ofUnpricedItemsAMoreImportantOneThatHardlyRunsShortStandsLater() {
    SeasonMaker maker = new SeasonMaker();
    maker.style("Toad").importance(3).floor(1);
    maker.plain("Frog");
    maker.aboard("Toad", "", "B", 0).aboard("Frog", "", "B", 0);
    KnownForecast forecast =
        new KnownForecast().poisson("Toad", 0.5 / 24).poisson("Frog", 2.0 / 24);
    assertEquals(
        List.of("Frog", "Toad"),
        list(maker, forecast).lines().stream().map(line -> line.item().style()).toList(),
        "expected short 2 against 0.5 x importance 3");
  }
}
