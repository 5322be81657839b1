package sparewell.spares;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.rates.Exposure;
import sparewell.rates.LossForecast;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.season.Style;
import sparewell.stock.OnHand;
import sparewell.stock.OnHand.ItemStock;

/**
 * Chooses the stretch to plan for.
 *
 * <p>The next event still to be fished, with every further event that starts before a free day has
 * passed since the one before it ended: without a free day there is no chance to restock. Where no
 * event lies ahead, the planning hours of the settings.
 */
public final class HorizonPlanner {
  private final Season season;
  private final LossForecast forecast;
  private final Map<String, List<ItemId>> items = new LinkedHashMap<>();
  private final Findings findings = new Findings();

  private HorizonPlanner(Season season, OnHand onHand, LossForecast forecast) {
    this.season = season;
    this.forecast = forecast;
    onHand
        .itemsByStyle()
        .forEach(
            (style, stocks) -> items.put(style, stocks.stream().map(ItemStock::item).toList()));
  }

  /**
   * The stretch to plan for. Hours of a style: at an event with a plan the planned ones, else the
   * hours afloat x its mean share of them; a style that no item of is in stock has none.
   */
  public static Horizon plan(Season season, OnHand onHand, LossForecast forecast) {
    HorizonPlanner planner = new HorizonPlanner(season, onHand, forecast);
    List<Event> events = run(season);
    return events.isEmpty() ? planner.planningHours() : planner.events(events);
  }

  /** The stretch of one event alone, wherever it lies in time. */
  public static Horizon single(Season season, OnHand onHand, LossForecast forecast, Event event) {
    return new HorizonPlanner(season, onHand, forecast).events(List.of(event));
  }

  /** A stretch of that many hours afloat, every style by its mean share of them. */
  static Horizon ofHours(
      Season season, OnHand onHand, LossForecast forecast, double hours, double days) {
    return new HorizonPlanner(season, onHand, forecast)
        .evenly(hours, days, "Planned for " + round(hours) + " hours afloat");
  }

  private static List<Event> run(Season season) {
    List<Event> run = new ArrayList<>();
    for (Event event : season.eventsAhead()) {
      if (!run.isEmpty() && !follows(run, event)) {
        break;
      }
      run.add(event);
    }
    return run;
  }

  /** True for an event that begins before a free day has passed since all of a run ended. */
  static boolean follows(List<Event> run, Event event) {
    return run.stream().anyMatch(one -> !event.date().isAfter(one.lastDay().plusDays(1)));
  }

  private Horizon planningHours() {
    Settings settings = season.settings();
    return evenly(
        settings.planningHours(),
        settings.planningDays(),
        "No event lies ahead: planned for the "
            + round(settings.planningHours())
            + " planning hours of the settings");
  }

  private Horizon evenly(double hours, double days, String words) {
    Map<String, Horizon.Use> uses = new LinkedHashMap<>();
    for (Style style : season.styles()) {
      uses.put(
          style.name(),
          new Horizon.Use(
              stretch(
                  style.name(), hours * forecast.meanShare(style.name()), days, Optional.empty()),
              false));
    }
    return new Horizon(List.of(), uses, words + afloatWords(), findings.list());
  }

  private Horizon events(List<Event> events) {
    Map<String, Horizon.Use> uses = new LinkedHashMap<>();
    for (Style style : season.styles()) {
      List<Exposure> stretches = new ArrayList<>();
      events.forEach(event -> stretches.addAll(at(event, style.name())));
      uses.put(style.name(), new Horizon.Use(stretches, inPlan(events, style.name())));
    }
    return new Horizon(events, uses, words(events) + afloatWords(), findings.list());
  }

  private List<Exposure> at(Event event, String style) {
    return event.plan().isEmpty()
        ? stretch(
            style, event.fishedHours() * forecast.meanShare(style), event.days(), event.cover())
        : event.plan().stream()
            .filter(line -> line.style().equals(style))
            .flatMap(line -> planned(event, line).stream())
            .toList();
  }

  private static boolean inPlan(List<Event> events, String style) {
    return events.stream()
        .flatMap(event -> event.plan().stream())
        .anyMatch(line -> line.style().equals(style));
  }

  private List<Exposure> planned(Event event, Event.PlanLine line) {
    List<ItemId> all = items.getOrDefault(line.style(), List.of());
    if (all.isEmpty()) {
      findings.add(
          Code.PLAN_STYLE_NOT_IN_STOCK, line.origin().under("Style"), line.style(), event.name());
      return List.of();
    }
    List<ItemId> among =
        line.colours().isEmpty()
            ? all
            : all.stream().filter(item -> named(line.colours(), item.colour())).toList();
    for (String colour : line.colours()) {
      if (all.stream().noneMatch(item -> named(List.of(colour), item.colour()))) {
        findings.add(
            Code.PLAN_COLOUR_NOT_IN_STOCK,
            line.origin().under("Colours"),
            colour,
            line.style(),
            event.name(),
            among.isEmpty()
                ? "planned as if all its colours were used"
                : "planned with the other colours named");
      }
    }
    // Rates per hour afloat know nothing of hours thrown, so the event's own hours apply.
    double hours = forecast.perHourAfloat() ? event.fishedHours() : line.plannedHours();
    return List.of(new Exposure(hours, event.days(), event.cover(), among.isEmpty() ? all : among));
  }

  private static boolean named(List<String> colours, String colour) {
    return colours.stream().anyMatch(name -> key(name).equals(key(colour)));
  }

  private static String key(String text) {
    return text.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  private List<Exposure> stretch(String style, double hours, double days, Optional<String> cover) {
    List<ItemId> all = items.getOrDefault(style, List.of());
    return hours > 0 && !all.isEmpty() ? List.of(new Exposure(hours, days, cover, all)) : List.of();
  }

  private static String words(List<Event> events) {
    String names = events.stream().map(HorizonPlanner::spoken).collect(Collectors.joining(", "));
    return events.size() == 1
        ? "Planned for " + names
        : "Planned together, since no free day for restocking lies between them: " + names;
  }

  private static String spoken(Event event) {
    return String.format(
        Locale.ROOT,
        "%s (%s, %s hours%s)",
        event.name(),
        event.date(),
        round(event.fishedHours()),
        event.plan().isEmpty() ? ", no plan: every style by its usual share" : "");
  }

  private static String round(double hours) {
    return String.format(Locale.ROOT, "%.1f", hours).replace(".0", "");
  }

  private String afloatWords() {
    return forecast.perHourAfloat()
        ? ". No trip has hours by style, so every style used counts for all hours afloat."
        : ".";
  }
}
