package sparewell.spares;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.numerics.CountDistribution;
import sparewell.rates.LossForecast;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.season.Style;
import sparewell.stock.OnHand;
import sparewell.stock.OnHand.ItemStock;

/**
 * Works out what to carry of every item.
 *
 * <p>Carry is the least n with P(loss &le; n) at or over the chance wanted, and never under the
 * floor. What is short aboard is brought from ashore first; what is still short is bought in whole
 * packs.
 */
public final class SparesPlanner {
  private final Season season;
  private final LossForecast forecast;
  private final Horizon horizon;

  private SparesPlanner(Season season, LossForecast forecast, Horizon horizon) {
    this.season = season;
    this.forecast = forecast;
    this.horizon = horizon;
  }

  /**
   * The plan for what lies ahead.
   *
   * <p>Packs to buy: ceil((carry - aboard - brought) / pieces a pack), at least 0. The chance
   * wanted is that of {@link #chanceWanted}, the floor that of {@link Floors}.
   *
   * @param forecast losses of items over the horizon
   */
  public static SparesReport plan(Season season, OnHand onHand, LossForecast forecast) {
    Horizon horizon = HorizonPlanner.plan(season, onHand, forecast);
    List<SparesRow> rows = rows(season, onHand, forecast, horizon);
    List<Finding> findings = new ArrayList<>(horizon.findings());
    Map<String, List<ItemStock>> stocked = onHand.itemsByStyle();
    for (Style style : season.styles()) {
      if (style.neededTogether() > 0 && !stocked.containsKey(style.name())) {
        findings.add(
            Finding.of(
                Code.NEEDED_BUT_NOT_IN_STOCK,
                style.origin().under("Needed at once"),
                style.name(),
                style.neededTogether()));
      }
    }
    List<Bring> brings = Bring.plan(season, rows, onHand, horizon.emptied(season));
    return new SparesReport(
        horizon,
        rows,
        brings,
        onHand.after(brings.stream().map(Bring::move).toList(), season::ashore),
        eventNeeds(season, onHand, forecast, horizon, rows),
        new OutlookReader(horizon, forecast, rows).read(),
        IdleStyle.of(season, onHand),
        findings);
  }

  /** One row for each item in stock, in the order of the workbook. */
  static List<SparesRow> rows(
      Season season, OnHand onHand, LossForecast forecast, Horizon horizon) {
    SparesPlanner planner = new SparesPlanner(season, forecast, horizon);
    Map<ItemId, SparesRow> byItem = new HashMap<>();
    Map<String, List<ItemStock>> stocked = onHand.itemsByStyle();
    for (Style style : season.styles()) {
      for (SparesRow row : planner.style(style, stocked.getOrDefault(style.name(), List.of()))) {
        byItem.put(row.item(), row);
      }
    }
    return onHand.items().stream()
        .map(stock -> byItem.get(stock.item()))
        .filter(Objects::nonNull)
        .toList();
  }

  private static List<EventNeed> eventNeeds(
      Season season,
      OnHand onHand,
      LossForecast forecast,
      Horizon horizon,
      List<SparesRow> together) {
    List<EventNeed> needs = new ArrayList<>();
    for (Event event : horizon.events()) {
      boolean alone = horizon.events().size() == 1;
      Horizon own = alone ? horizon : HorizonPlanner.single(season, onHand, forecast, event);
      List<SparesRow> rows = alone ? together : rows(season, onHand, forecast, own);
      List<EventNeed.Item> items = new ArrayList<>();
      for (int i = 0; i < rows.size(); i++) {
        SparesRow row = rows.get(i);
        if (row.used()) {
          boolean inPlan = own.use(row.item().style()).inPlan();
          int forLosses = row.losses().quantile(row.chanceWantedProbability());
          items.add(
              new EventNeed.Item(
                  row.item(),
                  row.losses(),
                  row.importance(),
                  inPlan,
                  Math.max(
                      forLosses,
                      inPlan
                          ? Math.min(1, row.aboard() + row.ashore() + together.get(i).buyPieces())
                          : 0)));
        }
      }
      needs.add(new EventNeed(event, items));
    }
    return needs;
  }

  /**
   * Wanted chance in force for the items of a style: the command line's, the style's, the events',
   * the setting's. Of events planned together the highest holds; one that asks for none asks for
   * the setting's.
   */
  static double chanceWanted(Settings settings, List<Event> events, Style style) {
    double usual = settings.chanceWantedProbability();
    return settings.chanceFromCommandLine()
        ? usual
        : style
            .chanceWantedProbability()
            .orElse(
                events.stream()
                    .mapToDouble(event -> event.chanceWantedProbability().orElse(usual))
                    .max()
                    .orElse(usual));
  }

  private List<SparesRow> style(Style style, List<ItemStock> items) {
    double chance = chanceWanted(season.settings(), horizon.events(), style);
    Horizon.Use use = horizon.use(style.name());
    Map<ItemId, CountDistribution> losses = forecast.itemLosses(style.name(), use.stretches());
    List<Floors.Floor> floors = Floors.of(season.settings(), style, items);
    List<SparesRow> rows = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      Optional<CountDistribution> loss = Optional.ofNullable(losses.get(items.get(i).item()));
      rows.add(row(style, items.get(i), loss, floors.get(i), chance));
    }
    return rows;
  }

  private SparesRow row(
      Style style,
      ItemStock item,
      Optional<CountDistribution> loss,
      Floors.Floor floor,
      double chance) {
    Horizon.Use use = horizon.use(style.name());
    CountDistribution losses = loss.orElse(CountDistribution.none());
    int forLosses = losses.quantile(chance);
    int carry = Math.max(forLosses, floor.pieces());
    int missing = Math.max(0, carry - item.aboard());
    int bring = Math.min(item.ashore(), missing);
    int packs =
        SparesRow.wholeLots(
            (int) (((long) missing - bring + style.piecesPerPack() - 1) / style.piecesPerPack()));
    SparesRow.Reason reason =
        forLosses > floor.pieces()
            ? use.inPlan() ? SparesRow.Reason.EVENT_PLAN : SparesRow.Reason.LOSS_RATE
            : floor.forNeededAtOnce() ? SparesRow.Reason.NEEDED_AT_ONCE : SparesRow.Reason.FLOOR;
    return new SparesRow(
        item.item(),
        item.aboard(),
        item.ashore(),
        use.hours(),
        losses,
        loss.isPresent(),
        style.importance(),
        chance,
        floor.pieces(),
        carry,
        reason,
        bring,
        packs,
        style.piecesPerPack(),
        item.packPrice());
  }
}
