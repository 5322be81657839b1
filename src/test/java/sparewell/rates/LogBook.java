package sparewell.rates;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.season.Cause;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.SeasonSketch;
import sparewell.season.StockRow;
import sparewell.season.Style;
import sparewell.season.StyleHours;
import sparewell.season.Trip;

/** Builds small seasons for tests of the loss model. */
public final class LogBook {
  public static final LocalDate AS_OF = LocalDate.of(2026, 5, 1);

  public final List<Style> styles = new ArrayList<>();
  public final List<StockRow> stock = new ArrayList<>();
  public final List<Trip> trips = new ArrayList<>();
  public final List<StyleHours> hours = new ArrayList<>();
  public final List<Loss> losses = new ArrayList<>();
  public final List<Event> events = new ArrayList<>();
  public OptionalDouble halfLife = OptionalDouble.empty();
  public boolean chanceFromCommandLine;

  public LogBook style(String name, String family, String... colours) {
    return style(name, family, OptionalDouble.empty(), colours);
  }

  public LogBook style(String name, String family, OptionalDouble chance, String... colours) {
    styles.add(SeasonSketch.style(name, family, chance));
    for (String colour : colours) {
      stocked(new ItemId(name, "", colour));
    }
    return this;
  }

  public LogBook stocked(ItemId item) {
    stock.add(
        new StockRow(
            item,
            new Place("Box", "Bow"),
            5,
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            Optional.empty(),
            Cell.NOWHERE));
    return this;
  }

  public LogBook trip(String id, int day, double fished, String cover) {
    return trip(id, day, 1, fished, cover);
  }

  public LogBook trip(String id, int day, double days, double fished, String cover) {
    trips.add(
        new Trip(
            id,
            LocalDate.of(2025, 1, 1).plusDays(day),
            fished > 0 ? OptionalDouble.of(fished) : OptionalDouble.empty(),
            days,
            cover.isEmpty() ? Optional.empty() : Optional.of(cover),
            Cell.NOWHERE));
    return this;
  }

  public LogBook thrown(String trip, String style, double time) {
    hours.add(new StyleHours(trip, style, time, Cell.NOWHERE));
    return this;
  }

  /** Thrown, but for hours that cannot be read. */
  public LogBook unread(String trip, String style) {
    Cell at = new Cell("Style hours", hours.size() + 2, 3);
    hours.add(new StyleHours(trip, style, OptionalDouble.empty(), at));
    return this;
  }

  public LogBook lost(String trip, String style, String colour, int pieces) {
    return lost(trip, style, colour, pieces, false);
  }

  public LogBook lost(String trip, String style, String colour, int pieces, boolean ranOut) {
    return lost(trip, new ItemId(style, "", colour), pieces, ranOut);
  }

  public LogBook lost(String trip, ItemId item, int pieces, boolean ranOut) {
    losses.add(
        new Loss(trip, item, pieces, Cause.SNAG, ranOut, new Cell("Losses", losses.size() + 2, 2)));
    return this;
  }

  public LogBook event(String name, String cover) {
    return event(name, cover, List.of());
  }

  public LogBook planned(String event, String style, double time) {
    return event(event, "", List.of(new Event.PlanLine(style, time, List.of(), Cell.NOWHERE)));
  }

  private LogBook event(String name, String cover, List<Event.PlanLine> plan) {
    events.add(
        new Event(
            name,
            AS_OF,
            "",
            8,
            1,
            cover.isEmpty() ? Optional.empty() : Optional.of(cover),
            "",
            OptionalInt.empty(),
            OptionalDouble.empty(),
            plan,
            Cell.NOWHERE));
    return this;
  }

  public Season season() {
    SeasonSketch sketch = new SeasonSketch();
    sketch.asOf = AS_OF;
    sketch.chanceFromCommandLine = chanceFromCommandLine;
    sketch.halfLifeMonths = halfLife;
    sketch.styles = styles;
    sketch.stock = stock;
    sketch.trips = trips;
    sketch.styleHours = hours;
    sketch.losses = losses;
    sketch.events = events;
    return sketch.season();
  }
}
