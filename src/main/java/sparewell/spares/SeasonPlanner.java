package sparewell.spares;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sparewell.numerics.CountDistribution;
import sparewell.rates.Exposure;
import sparewell.rates.LossForecast;
import sparewell.rates.LossForecast.StagedStock;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.stock.OnHand;
import sparewell.stock.OnHand.ItemStock;

/**
 * Looks ahead over all events: what each uses, what is left before each if nothing is bought, and
 * what must be bought by when.
 *
 * <p>Losses are always foreseen from now through an event as a whole, so that what one event may
 * use is never counted on for a later one, and the unknown rate of a style counts for all alike.
 * Rates walk on with the trips until then: the events before, or as many as the last year's trips
 * let expect; the first event is the next trip, as for the spares. Before the first event at least
 * what the spares ask for is bought, their floors with it, and with no event after it just that.
 */
public final class SeasonPlanner {
  private static final int MOST_COURSES = 5;

  private final Season season;
  private final LossForecast forecast;
  private final OnHand onHand;
  private final Map<ItemId, SparesRow> next = new HashMap<>();
  private final List<Event> events;
  private final List<Integer> runs = new ArrayList<>(); // first event of each event's run
  private final List<Horizon> uses = new ArrayList<>();
  private final List<ItemCourse> items = new ArrayList<>();

  /**
   * An item through the season.
   *
   * @param stock what is on hand of it
   * @param through pieces lost from now through each event
   * @param packs packs to have bought before each event
   * @param floorPacks packs that only fill floors, all before the first
   */
  private record ItemCourse(
      Style style, ItemStock stock, List<CountDistribution> through, int[] packs, int floorPacks) {
    int held() {
      return stock.aboard() + stock.ashore();
    }

    /** Pieces expected to be left after event k; before the first for -1. */
    double left(int k) {
      return k < 0
          ? held()
          : held() - through.get(k).mean() + through.get(k).expectedShortage(held());
    }

    double missed(int k) {
      return through.get(k).expectedShortage(held())
          - (k == 0 ? 0 : through.get(k - 1).expectedShortage(held()));
    }

    double lost(int k) {
      return through.get(k).mean() - (k == 0 ? 0 : through.get(k - 1).mean());
    }

    int bought(int k) {
      return packs[k] - (k == 0 ? 0 : packs[k - 1]);
    }

    boolean sure() {
      return through.get(through.size() - 1).above(held()) < 1e-4;
    }

    Optional<BigDecimal> cost(int count) {
      return stock.packPrice().map(price -> price.multiply(BigDecimal.valueOf(count)));
    }
  }

  private SeasonPlanner(Season season, OnHand onHand, LossForecast forecast, List<SparesRow> next) {
    this.season = season;
    this.onHand = onHand;
    this.forecast = forecast;
    this.events = season.eventsAhead();
    next.forEach(row -> this.next.put(row.item(), row));
  }

  /**
   * The plan; empty where no event lies ahead.
   *
   * @param next what the spares for the next event ask for
   */
  public static SeasonPlan plan(
      Season season, OnHand onHand, LossForecast forecast, List<SparesRow> next) {
    return new SeasonPlanner(season, onHand, forecast, next).plan();
  }

  private SeasonPlan plan() {
    for (int k = 0; k < events.size(); k++) {
      boolean goesOn =
          k > 0 && HorizonPlanner.follows(events.subList(runs.get(k - 1), k), events.get(k));
      runs.add(goesOn ? runs.get(k - 1) : k);
      uses.add(HorizonPlanner.single(season, onHand, forecast, events.get(k)));
    }
    Map<String, List<ItemStock>> stocked = onHand.itemsByStyle();
    for (Style style : season.styles()) {
      follow(style, stocked.getOrDefault(style.name(), List.of()));
    }
    boolean important = items.stream().anyMatch(item -> item.style().importance() >= 1);
    List<ItemCourse> watched =
        items.stream()
            .filter(
                item -> important ? item.style().importance() >= 1 : item.style().importance() > 0)
            .toList();
    List<SeasonPlan.Stage> stages = stages(watched);
    List<SeasonPlan.Purchase> purchases = purchases();
    return new SeasonPlan(stages, lines(), styles(), purchases, months(purchases), courses());
  }

  private List<Exposure> through(String style, int k) {
    return IntStream.rangeClosed(0, k).boxed().flatMap(j -> at(style, j).stream()).toList();
  }

  private List<Exposure> at(String style, int k) {
    int steps = steps(k);
    return uses.get(k).use(style).stretches().stream().map(use -> use.ahead(steps)).toList();
  }

  /** Number of trips ahead at which an event lies: the first is the next trip. */
  private int steps(int k) {
    LocalDate now = season.settings().asOf();
    long lastYear =
        season.trips().stream().filter(trip -> trip.date().isAfter(now.minusYears(1))).count();
    long days = ChronoUnit.DAYS.between(events.get(0).date(), events.get(k).date());
    return 1 + Math.max(k, (int) Math.round(lastYear * days / 365.25));
  }

  private void follow(Style style, List<ItemStock> stocks) {
    if (stocks.isEmpty() || events.isEmpty()) {
      return;
    }
    double chance = SparesPlanner.chanceWanted(season.settings(), events, style);
    List<Map<ItemId, CountDistribution>> losses = new ArrayList<>();
    for (int k = 0; k < events.size(); k++) {
      losses.add(
          k > 0 && at(style.name(), k).isEmpty()
              ? losses.get(k - 1)
              : forecast.itemLosses(style.name(), through(style.name(), k)));
    }
    for (ItemStock stock : stocks) {
      List<CountDistribution> own =
          losses.stream()
              .map(all -> all.getOrDefault(stock.item(), CountDistribution.none()))
              .toList();
      items.add(course(style, stock, own, chance));
    }
  }

  private ItemCourse course(
      Style style, ItemStock stock, List<CountDistribution> losses, double chance) {
    int last = events.size() - 1;
    int[] packs =
        runs.get(last) == 0 ? new int[events.size()] : staged(style, stock, losses, chance);
    SparesRow row = next.get(stock.item());
    if (row == null) {
      return new ItemCourse(style, stock, losses, packs, 0);
    }
    int early = Math.max(0, row.buyPacks() - packs[0]);
    for (int k = 0; k <= last; k++) {
      packs[k] = Math.max(packs[k], row.buyPacks());
    }
    return new ItemCourse(style, stock, losses, packs, Math.min(early, PackSource.filling(row)));
  }

  /** Packs to have bought before each event, as losses ask for them; the same within a run. */
  private int[] staged(
      Style style, ItemStock stock, List<CountDistribution> losses, double chance) {
    int[] firsts = runs.stream().mapToInt(Integer::intValue).distinct().toArray();
    List<CountDistribution> ofRuns = new ArrayList<>();
    for (int r = 1; r <= firsts.length; r++) {
      ofRuns.add(losses.get((r < firsts.length ? firsts[r] : runs.size()) - 1));
    }
    int held = stock.aboard() + stock.ashore();
    List<List<Exposure>> uses =
        IntStream.range(0, events.size()).mapToObj(k -> at(style.name(), k)).toList();
    int[] packs =
        StagedPacks.of(
            ofRuns,
            held,
            style.piecesPerPack(),
            chance,
            bought ->
                lasts(stock.item(), uses, held, spread(bought, firsts), style.piecesPerPack()));
    return spread(packs, firsts);
  }

  private int[] spread(int[] ofRuns, int[] firsts) {
    return runs.stream().mapToInt(first -> ofRuns[Arrays.binarySearch(firsts, first)]).toArray();
  }

  /** Joint chance that an item lasts through all events. */
  private double lasts(ItemId item, List<List<Exposure>> uses, int held, int[] packs, int perPack) {
    List<LossForecast.Stage> stages = new ArrayList<>();
    for (int k = 0; k < packs.length; k++) {
      stages.add(new LossForecast.Stage(uses.get(k), Map.of(item, held + packs[k] * perPack)));
    }
    return forecast
        .lastsThroughout(List.of(new StagedStock(item.style(), stages)))[packs.length - 1];
  }

  private List<SeasonPlan.Stage> stages(List<ItemCourse> watched) {
    List<OptionalDouble> planned = lasting(watched, true);
    List<OptionalDouble> unbought = lasting(watched, false);
    List<SeasonPlan.Stage> stages = new ArrayList<>();
    for (int k = 0; k < events.size(); k++) {
      int at = k;
      int packs = items.stream().mapToInt(item -> item.bought(at)).sum();
      stages.add(
          new SeasonPlan.Stage(
              events.get(k),
              runs.get(k) < k,
              items.stream().mapToDouble(item -> item.lost(at)).sum(),
              items.stream().mapToDouble(item -> item.missed(at)).sum(),
              unbought.get(k),
              planned.get(k),
              packs,
              items.stream()
                  .map(item -> item.cost(item.bought(at)).orElse(BigDecimal.ZERO))
                  .reduce(BigDecimal.ZERO, BigDecimal::add),
              packs == 0 ? Optional.empty() : Optional.of(buyBy(k))));
    }
    return stages;
  }

  /**
   * Chances that nothing watched has run out by the end of each event, with all bought as planned
   * or with nothing bought; absent where nothing is watched. Items that are as good as sure to last
   * are left out: each costs time, and none counts.
   */
  private List<OptionalDouble> lasting(List<ItemCourse> watched, boolean bought) {
    List<ItemCourse> unsure = watched.stream().filter(item -> !item.sure()).toList();
    OptionalDouble sure = watched.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(1);
    return unsure.isEmpty()
        ? Collections.nCopies(events.size(), sure)
        : Arrays.stream(forecast.lastsThroughout(stocks(unsure, bought)))
            .mapToObj(OptionalDouble::of)
            .toList();
  }

  private List<StagedStock> stocks(List<ItemCourse> items, boolean bought) {
    Map<String, List<ItemCourse>> byStyle =
        items.stream()
            .collect(
                Collectors.groupingBy(
                    item -> item.style().name(), LinkedHashMap::new, Collectors.toList()));
    List<StagedStock> stocks = new ArrayList<>();
    byStyle.forEach(
        (style, own) -> {
          List<LossForecast.Stage> stages = new ArrayList<>();
          for (int k = 0; k < events.size(); k++) {
            Map<ItemId, Integer> held = new LinkedHashMap<>();
            for (ItemCourse item : own) {
              int more = bought ? item.packs()[k] * item.style().piecesPerPack() : 0;
              held.put(item.stock().item(), item.held() + more);
            }
            stages.add(new LossForecast.Stage(at(style, k), held));
          }
          stocks.add(new StagedStock(style, stages));
        });
    return stocks;
  }

  /** Last day to order for an event: the lead time before its run begins, or today. */
  private LocalDate buyBy(int k) {
    long lead = (long) Math.ceil(season.settings().leadTimeDays());
    LocalDate day = events.get(runs.get(k)).date().minusDays(lead);
    LocalDate now = season.settings().asOf();
    return day.isBefore(now) ? now : day;
  }

  private List<SeasonPlan.Line> lines() {
    List<SeasonPlan.Line> lines = new ArrayList<>();
    for (int k = 0; k < events.size(); k++) {
      for (ItemCourse item : items) {
        if (item.lost(k) > 1e-9) {
          lines.add(
              new SeasonPlan.Line(
                  events.get(k),
                  item.stock().item(),
                  item.lost(k),
                  item.left(k - 1),
                  item.through().get(k).above(item.held()),
                  item.bought(k) > 0 ? Optional.of(buyBy(k)) : Optional.empty()));
        }
      }
    }
    return lines;
  }

  private List<SeasonPlan.StyleLine> styles() {
    Map<String, List<ItemCourse>> byStyle =
        items.stream()
            .collect(
                Collectors.groupingBy(
                    item -> item.style().name(), LinkedHashMap::new, Collectors.toList()));
    List<SeasonPlan.StyleLine> lines = new ArrayList<>();
    for (int event = 0; event < events.size(); event++) {
      int k = event;
      byStyle.entrySet().stream()
          .map(
              style ->
                  new SeasonPlan.StyleLine(
                      events.get(k),
                      style.getKey(),
                      style.getValue().stream().mapToDouble(item -> item.lost(k)).sum(),
                      style.getValue().stream().mapToDouble(item -> item.left(k - 1)).sum()))
          .filter(line -> line.expectedLossPieces() > 1e-9)
          .sorted(Comparator.comparingDouble(line -> -line.expectedLossPieces()))
          .forEach(lines::add);
    }
    return lines;
  }

  private List<SeasonPlan.Purchase> purchases() {
    List<SeasonPlan.Purchase> purchases = new ArrayList<>();
    for (int k = 0; k < events.size(); k++) {
      for (ItemCourse item : items) {
        int packs = item.bought(k);
        if (packs > 0) {
          purchases.add(
              new SeasonPlan.Purchase(
                  buyBy(k),
                  events.get(k),
                  item.stock().item(),
                  packs,
                  packs * item.style().piecesPerPack(),
                  item.cost(packs),
                  k == 0 ? item.floorPacks() : 0,
                  k == 0 ? packs - asked(item.stock().item()) : packs));
        }
      }
    }
    purchases.sort(
        Comparator.comparing(SeasonPlan.Purchase::buyBy)
            .thenComparing(SeasonPlan.Purchase::onlyFloor));
    return purchases;
  }

  private int asked(ItemId item) {
    SparesRow row = next.get(item);
    return row == null ? 0 : row.buyPacks();
  }

  private static List<SeasonPlan.Month> months(List<SeasonPlan.Purchase> purchases) {
    Map<YearMonth, List<SeasonPlan.Purchase>> byMonth =
        purchases.stream()
            .collect(
                Collectors.groupingBy(
                    one -> YearMonth.from(one.buyBy()), TreeMap::new, Collectors.toList()));
    List<SeasonPlan.Month> months = new ArrayList<>();
    byMonth.forEach(
        (month, own) ->
            months.add(
                new SeasonPlan.Month(
                    month,
                    own.stream().mapToInt(SeasonPlan.Purchase::packs).sum(),
                    SeasonPlan.cost(own),
                    own.stream()
                        .filter(one -> one.cost().isEmpty())
                        .mapToInt(SeasonPlan.Purchase::packs)
                        .sum())));
    return months;
  }

  /** The styles whose stock is the smallest part of what the season is expected to use. */
  private List<SeasonPlan.Course> courses() {
    Map<String, Integer> held = new LinkedHashMap<>();
    Map<String, Double> lost = new LinkedHashMap<>();
    for (ItemCourse item : items) {
      held.merge(item.style().name(), item.held(), Integer::sum);
      lost.merge(item.style().name(), item.through().get(events.size() - 1).mean(), Double::sum);
    }
    return lost.keySet().stream()
        .filter(style -> lost.get(style) > 0)
        .sorted(Comparator.comparingDouble(style -> held.get(style) / lost.get(style)))
        .limit(MOST_COURSES)
        .map(style -> course(style, held.get(style)))
        .toList();
  }

  private SeasonPlan.Course course(String style, int held) {
    List<SeasonPlan.Point> points = new ArrayList<>();
    points.add(new SeasonPlan.Point(season.settings().asOf(), held, held, held));
    for (int k = 0; k < events.size(); k++) {
      CountDistribution losses = forecast.styleLosses(style, through(style, k));
      points.add(
          new SeasonPlan.Point(
              events.get(k).lastDay(),
              held - losses.mean() + losses.expectedShortage(held),
              Math.max(0, held - losses.quantile(0.95)),
              Math.max(0, held - losses.quantile(0.05))));
    }
    return new SeasonPlan.Course(style, points);
  }
}
