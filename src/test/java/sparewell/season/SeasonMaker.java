package sparewell.season;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.stock.OnHand.ItemStock;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/** Builds small seasons and what is on hand, for tests. */
public final class SeasonMaker extends SeasonSketch {
  /** Date of analysis. */
  public static final LocalDate AS_OF = LocalDate.of(2026, 5, 1);

  private static final Length AT = Length.of(2, LengthUnit.METRE);
  private static final Length SIDE = Length.of(-0.5, LengthUnit.METRE);

  private final List<StyleInHand> named = new ArrayList<>();
  private final List<Holding> holdings = new ArrayList<>();
  private final Map<ItemId, OptionalInt> floors = new LinkedHashMap<>();

  public SeasonMaker() {
    asOf = AS_OF;
    carryAtLeast = 0;
  }

  /** The settings' floor; 0 where not set. */
  public SeasonMaker carryAtLeast(int pieces) {
    carryAtLeast = pieces;
    return this;
  }

  /** The settings' chance wanted. */
  public SeasonMaker chance(double probability, boolean fromCommandLine) {
    chance = probability;
    chanceFromCommandLine = fromCommandLine;
    return this;
  }

  /** Money to spend. */
  public SeasonMaker budget(String money) {
    budget = Optional.of(new BigDecimal(money));
    return this;
  }

  /** Styles of which nothing but the name is known. */
  public SeasonMaker plain(String... names) {
    for (String name : names) {
      style(name);
    }
    return this;
  }

  /** A style of known pieces and price of a pack. */
  public SeasonMaker priced(String name, int pieces, String money) {
    return style(name).pack(pieces, money);
  }

  /** A style, to be told more of by the next calls. */
  public SeasonMaker style(String name) {
    return style(name, "Family");
  }

  /** A style of a family of its own, with five pieces in stock of each colour. */
  public SeasonMaker style(String name, String family, String... colours) {
    named.add(new StyleInHand(name, family));
    for (String colour : colours) {
      stocked(new ItemId(name, "", colour));
    }
    return this;
  }

  /** Five pieces in stock. */
  public SeasonMaker stocked(ItemId item) {
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

  private static final class StyleInHand {
    private final String name;
    private final String family;
    private int perPack = 1;
    private boolean packs;
    private Optional<BigDecimal> price = Optional.empty();
    private OptionalInt floor = OptionalInt.empty();
    private int atOnce;
    private double factor = 1;
    private double importance = 1;
    private OptionalDouble wanted = OptionalDouble.empty();

    private StyleInHand(String name, String family) {
      this.name = name;
      this.family = family;
    }

    private Style style(int row) {
      return new Style(
          name,
          family,
          Optional.of(Mass.of(10, MassUnit.GRAM)),
          packs,
          perPack,
          price,
          floor,
          atOnce,
          factor,
          importance,
          wanted,
          new Cell("Styles", row, 1));
    }
  }

  private StyleInHand last() {
    return named.get(named.size() - 1);
  }

  /** The last style's pieces and price of a pack. */
  public SeasonMaker pack(int pieces, String money) {
    last().perPack = pieces;
    last().price = Optional.of(new BigDecimal(money));
    return this;
  }

  /** The last style is counted in packs. */
  public SeasonMaker countedInPacks() {
    last().packs = true;
    return this;
  }

  /** The last style's floor. */
  public SeasonMaker floor(int pieces) {
    last().floor = OptionalInt.of(pieces);
    return this;
  }

  /** Pieces of the last style needed at once, and its spare factor. */
  public SeasonMaker atOnce(int pieces, double spareFactor) {
    last().atOnce = pieces;
    last().factor = spareFactor;
    return this;
  }

  /** The last style's importance. */
  public SeasonMaker importance(double weight) {
    last().importance = weight;
    return this;
  }

  /** The last style's chance wanted. */
  public SeasonMaker wanted(double probability) {
    last().wanted = OptionalDouble.of(probability);
    return this;
  }

  /** Pieces of an item aboard, in a box of that name in the compartment Bow. */
  public SeasonMaker aboard(String style, String colour, String box, int pieces) {
    return hold(style, colour, new Place(box, "Bow"), false, pieces);
  }

  /** Pieces of an item ashore, in a box of that name in the compartment Garage. */
  public SeasonMaker ashore(String style, String colour, String box, int pieces) {
    return hold(style, colour, new Place(box, "Garage"), true, pieces);
  }

  private SeasonMaker hold(String style, String colour, Place place, boolean ashore, int pieces) {
    holdings.add(
        new Holding(
            new ItemId(style, "", colour),
            place,
            ashore,
            pieces,
            Optional.of(Mass.of(10, MassUnit.GRAM))));
    return this;
  }

  /** A box that stands ashore. */
  public SeasonMaker boxAshore(String name) {
    return box(name, "Garage");
  }

  /** A box aboard, in the compartment Bow. */
  public SeasonMaker box(String name) {
    return box(name, "Bow");
  }

  private SeasonMaker box(String name, String compartment) {
    boxes.add(
        new Box(
            name,
            compartment,
            Optional.empty(),
            Optional.empty(),
            "",
            false,
            false,
            Optional.empty(),
            OptionalInt.empty(),
            Cell.NOWHERE));
    return this;
  }

  /** The item's own floor. */
  public SeasonMaker itemFloor(String style, String colour, int pieces) {
    floors.put(new ItemId(style, "", colour), OptionalInt.of(pieces));
    return this;
  }

  /** A trip with hours of one style. */
  public SeasonMaker trip(String id, LocalDate date, double fished, String style, double thrown) {
    return trip(id, date, 1, fished, "").thrown(id, style, thrown);
  }

  /** A trip of one day, so many days after New Year 2025; 0 hours: not known. */
  public SeasonMaker trip(String id, int day, double fished, String cover) {
    return trip(id, day, 1, fished, cover);
  }

  /** A trip of several days. */
  public SeasonMaker trip(String id, int day, double days, double fished, String cover) {
    return trip(id, LocalDate.of(2025, 1, 1).plusDays(day), days, fished, cover);
  }

  /** A trip of several days from that date on. */
  public SeasonMaker trip(String id, LocalDate date, double days, double fished, String cover) {
    OptionalDouble known = fished > 0 ? OptionalDouble.of(fished) : OptionalDouble.empty();
    trips.add(new Trip(id, date, known, days, named(cover), Cell.NOWHERE));
    return this;
  }

  private static Optional<String> named(String cover) {
    return cover.isEmpty() ? Optional.empty() : Optional.of(cover);
  }

  /** Hours of a style. */
  public SeasonMaker thrown(String trip, String style, double time) {
    styleHours.add(new StyleHours(trip, style, time, Cell.NOWHERE));
    return this;
  }

  /** Thrown, but for hours that cannot be read. */
  public SeasonMaker unread(String trip, String style) {
    Cell at = new Cell("Style hours", styleHours.size() + 2, 3);
    styleHours.add(new StyleHours(trip, style, OptionalDouble.empty(), at));
    return this;
  }

  /** Pieces lost at a snag. */
  public SeasonMaker lost(String trip, String style, String colour, int pieces) {
    return lost(trip, style, colour, pieces, false);
  }

  /** Pieces lost at a snag, perhaps the last. */
  public SeasonMaker lost(String trip, String style, String colour, int pieces, boolean ranOut) {
    return lost(trip, new ItemId(style, "", colour), pieces, ranOut);
  }

  /** Pieces of any item lost at a snag. */
  public SeasonMaker lost(String trip, ItemId item, int pieces, boolean ranOut) {
    return loss(trip, item, pieces, Cause.SNAG, ranOut);
  }

  /** A loss. */
  public SeasonMaker loss(String trip, String style, String colour, int pieces, Cause cause) {
    return loss(trip, new ItemId(style, "", colour), pieces, cause, false);
  }

  private SeasonMaker loss(String trip, ItemId item, int pieces, Cause cause, boolean ranOut) {
    Cell at = new Cell("Losses", losses.size() + 2, 2);
    losses.add(new Loss(trip, item, pieces, cause, ranOut, at));
    return this;
  }

  /** An event in that cover. */
  public SeasonMaker event(String name, String cover) {
    return event(name, AS_OF, 8, 1, named(cover), "", OptionalInt.empty());
  }

  /** An event for which one style is planned. */
  public SeasonMaker planned(String event, String style, double time) {
    return event(event, AS_OF, 8, 1, line(style, time));
  }

  /** An event with a plan of lines made by {@link #line}. */
  public SeasonMaker event(
      String name, LocalDate date, double hoursAfloat, double days, Event.PlanLine... plan) {
    return boxedEvent(name, date, hoursAfloat, days, "", OptionalInt.empty(), plan);
  }

  /** An event with a box. */
  public SeasonMaker boxedEvent(
      String name,
      LocalDate date,
      double hoursAfloat,
      double days,
      String box,
      OptionalInt slots,
      Event.PlanLine... plan) {
    return event(name, date, hoursAfloat, days, Optional.empty(), box, slots, plan);
  }

  private SeasonMaker event(
      String name,
      LocalDate date,
      double hoursAfloat,
      double days,
      Optional<String> cover,
      String box,
      OptionalInt slots,
      Event.PlanLine... plan) {
    events.add(
        new Event(
            name,
            date,
            "",
            hoursAfloat,
            days,
            cover,
            box,
            slots,
            OptionalDouble.empty(),
            List.of(plan),
            new Cell("Events", events.size() + 2, 1)));
    return this;
  }

  /** Gives the last event a chance wanted. */
  public SeasonMaker eventChance(double probability) {
    Event last = events.remove(events.size() - 1);
    events.add(
        new Event(
            last.name(),
            last.date(),
            last.water(),
            last.fishedHours(),
            last.days(),
            last.cover(),
            last.box(),
            last.slots(),
            OptionalDouble.of(probability),
            last.plan(),
            last.origin()));
    return this;
  }

  /** A line of a plan. */
  public static Event.PlanLine line(String style, double planned, String... colours) {
    return new Event.PlanLine(style, planned, List.of(colours), new Cell("Event plan", 2, 2));
  }

  @Override
  public Season season() {
    styles = new ArrayList<>();
    named.forEach(one -> styles.add(one.style(styles.size() + 2)));
    compartments = List.of(compartment("Bow", false, 3), compartment("Garage", true, 4));
    return super.season();
  }

  private static Compartment compartment(String name, boolean ashore, int row) {
    Cell at = new Cell("Compartments", row, 1);
    return new Compartment(
        name, AT, SIDE, Optional.empty(), Optional.empty(), false, ashore, at, at);
  }

  /** Pieces on hand. */
  public OnHand onHand() {
    Map<ItemId, ItemStock> items = new LinkedHashMap<>();
    for (Holding holding : holdings) {
      StyleInHand style =
          named.stream()
              .filter(one -> one.name.equals(holding.item().style()))
              .findFirst()
              .orElseThrow();
      ItemStock piece =
          new ItemStock(
              holding.item(),
              holding.ashore() ? 0 : holding.pieces(),
              holding.ashore() ? holding.pieces() : 0,
              floors.getOrDefault(holding.item(), OptionalInt.empty()),
              style.price,
              holding.weightEach());
      items.merge(
          holding.item(),
          piece,
          (one, other) ->
              new ItemStock(
                  one.item(),
                  one.aboard() + other.aboard(),
                  one.ashore() + other.ashore(),
                  one.carryAtLeast(),
                  one.packPrice(),
                  one.weightEach()));
    }
    return new OnHand(holdings, List.copyOf(items.values()), List.of());
  }
}
