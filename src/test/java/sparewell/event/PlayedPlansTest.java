package sparewell.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sparewell.event.EventPacking.Action;
import sparewell.ooxml.WorkbookPackage;
import sparewell.rates.LossForecast;
import sparewell.rates.LossModel;
import sparewell.season.Compartment;
import sparewell.season.Event;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;
import sparewell.season.SeasonSketch;
import sparewell.spares.Bring;
import sparewell.spares.BuyList;
import sparewell.spares.BuyPlanner;
import sparewell.spares.KnownForecast;
import sparewell.spares.SparesPlanner;
import sparewell.spares.SparesReport;
import sparewell.stock.OnHand;
import sparewell.stock.OnHandCalculator;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.read.SeasonReader;

/** Plans are carried out as an angler would: all of it can be done, and then nothing is left. */
class PlayedPlansTest {
  private static final Set<String> ASHORE = Set.of("Garage");

  /** The three plans of a stock, one after the other. */
  record Plans(SparesReport spares, BuyList buys, EventPacking packing) {
    static Plans of(Season season, OnHand onHand, LossForecast forecast) {
      SparesReport spares = SparesPlanner.plan(season, onHand, forecast);
      BuyList buys = BuyPlanner.plan(season, spares, forecast);
      return new Plans(spares, buys, EventPacker.pack(season, buys.bought(), spares.eventNeeds()));
    }

    List<Object> leftToDo() {
      List<Object> left = new ArrayList<>(spares.brings());
      buys.lines().stream().filter(BuyList.Line::bought).forEach(left::add);
      packing.lines().stream().filter(line -> line.move().isPresent()).forEach(left::add);
      return left;
    }
  }

  @Test
  void randomSeasonsCanBePlayedAndThenNothingIsLeftToAsk() {
    Random random = new Random(20260501);
    EnumSet<Action> seen = EnumSet.noneOf(Action.class);
    int open = 0;
    for (int round = 0; round < 1_500; round++) {
      SeasonMaker maker = season(random);
      KnownForecast forecast = new KnownForecast();
      for (int s = 0; s < 5; s++) {
        forecast.negBin("S" + s, random.nextDouble() * 0.3, 0.6 + random.nextDouble());
        forecast.share("S" + s, 0.3);
      }
      Season season = maker.season();
      Plans plans = Plans.of(season, maker.onHand(), forecast);
      String told = "round " + round + "\n" + plans.packing().lines();
      OnHand after =
          Played.all(maker.onHand(), plans.spares(), plans.buys(), plans.packing(), ASHORE);
      plans.packing().lines().forEach(line -> seen.add(line.action()));
      open += plans.spares().brings().stream().anyMatch(Bring::open) ? 1 : 0;
      assertTrue(plans.spares().brings().stream().allMatch(bring -> bring.to().isPresent()), told);
      SeasonSketch paid = SeasonSketch.of(season);
      paid.budget = season.settings().budget().map(money -> money.subtract(plans.buys().spent()));
      Plans next = Plans.of(paid.season(), after, forecast);
      assertEquals(List.of(), next.leftToDo(), told);
      if (season.settings().budget().isEmpty()) {
        assertTrue(
            next.packing().lines().stream().noneMatch(line -> line.action() == Action.BUY), told);
      }
    }
    assertEquals(EnumSet.allOf(Action.class), seen);
    assertTrue(open > 100, open + " seasons with pieces of a family new aboard");
  }

  @Test
  void theDemosPlansCanBePlayedAndThenNothingIsLeftToAsk() throws Exception {
    for (String file : List.of("demo.xlsx", "demo-metric.xlsx")) {
      Season season = demo(Path.of("workbook-templates", file));
      OnHand onHand = OnHandCalculator.of(season);
      LossForecast forecast = LossModel.fit(season);
      Plans plans = Plans.of(season, onHand, forecast);
      Set<String> ashore =
          season.compartments().stream()
              .filter(Compartment::ashore)
              .map(Compartment::name)
              .collect(Collectors.toSet());
      OnHand after = Played.all(onHand, plans.spares(), plans.buys(), plans.packing(), ashore);
      assertFalse(plans.leftToDo().isEmpty(), file);
      SeasonSketch paid = SeasonSketch.of(season);
      paid.budget = season.settings().budget().map(money -> money.subtract(plans.buys().spent()));
      assertEquals(List.of(), Plans.of(paid.season(), after, forecast).leftToDo(), file);
    }
  }

  private static Season demo(Path file) throws Exception {
    try (WorkbookPackage book = WorkbookPackage.open(file)) {
      return SeasonReader.read(book, ReadOptions.on(LocalDate.of(2026, 4, 1))).season();
    }
  }

  private static SeasonMaker season(Random random) {
    SeasonMaker maker = new SeasonMaker().carryAtLeast(random.nextInt(3));
    if (random.nextInt(3) == 0) {
      maker.budget(new BigDecimal(random.nextInt(60)).toPlainString());
    }
    for (int s = 0; s < 5; s++) {
      SeasonMaker style = maker.style("S" + s, "F" + s / 2 * 2).importance(random.nextInt(3));
      if (random.nextInt(4) > 0) {
        style.pack(1 + random.nextInt(4), (1 + random.nextInt(9)) + ".00");
      }
      if (random.nextInt(3) == 0) {
        style.countedInPacks();
      }
      style.atOnce(random.nextInt(3), 1.5);
      for (String colour : List.of("black", "white")) {
        for (String box : List.of("Kit", "J1", "J2", "Kit2")) {
          if (random.nextInt(3) == 0) {
            maker.aboard("S" + s, colour, box, random.nextInt(4));
          }
        }
        if (random.nextInt(2) == 0) {
          maker.ashore("S" + s, colour, "Tub", random.nextInt(5));
        }
      }
    }
    List<String> boxes = List.of("Kit", "Kit2", "J1", "J2").subList(0, random.nextInt(5));
    boxes.forEach(maker::box);
    int events = 1 + random.nextInt(3);
    for (int e = 0; e < events; e++) {
      String box = List.of("Kit", "Kit", "Kit2", "").get(random.nextInt(4));
      OptionalInt slots =
          random.nextInt(4) == 0 ? OptionalInt.empty() : OptionalInt.of(random.nextInt(9));
      Event.PlanLine[] plan =
          random.nextBoolean()
              ? new Event.PlanLine[0]
              : new Event.PlanLine[] {
                line("S0", 1 + random.nextInt(20)), line("S1", 4, "black"), line("S2", 9, "white")
              };
      maker.boxedEvent("E" + e, AS_OF.plusDays(e), 8, 1, box, slots, plan);
    }
    return maker;
  }
}
