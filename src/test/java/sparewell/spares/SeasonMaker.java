package sparewell.spares;

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
import sparewell.season.Box;
import sparewell.season.Cause;
import sparewell.season.Compartment;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.SeasonSketch;
import sparewell.season.Style;
import sparewell.season.StyleHours;
import sparewell.season.Trip;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.stock.OnHand.ItemStock;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/** Builds small seasons and what is on hand, for tests. */
public final class SeasonMaker {
  /** Date of analysis. */
  public static final LocalDate AS_OF = LocalDate.of(2026, 5, 1);

  private static final Length AT = Length.of(2, LengthUnit.METRE);
  private static final Length SIDE = Length.of(-0.5, LengthUnit.METRE);

  private final List<Style> styles = new ArrayList<>();
  private final List<Box> boxes = new ArrayList<>();
  private final List<Event> events = new ArrayList<>();
  private final List<Trip> trips = new ArrayList<>();
  private final List<StyleHours> hours = new ArrayList<>();
  private final List<Loss> losses = new ArrayList<>();
  private final List<Holding> holdings = new ArrayList<>();
  private final Map<ItemId, OptionalInt> floors = new LinkedHashMap<>();
  private int carryAtLeast;
  private double chance = 0.95;
  private boolean commandLine;
  private Optional<BigDecimal> budget = Optional.empty();

  /** The settings' floor; 0 where not set. */
  public SeasonMaker carryAtLeast(int pieces) {
    carryAtLeast = pieces;
    return this;
  }

  /** The settings' chance wanted. */
  public SeasonMaker chance(double probability, boolean fromCommandLine) {
    chance = probability;
    commandLine = fromCommandLine;
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
      style(name).add();
    }
    return this;
  }

  /** A style of known pieces and price of a pack. */
  public SeasonMaker priced(String name, int pieces, String money) {
    return style(name).pack(pieces, money).add();
  }

  /** A style under construction. */
  public StyleMaker style(String name) {
    return style(name, "Family");
  }

  /** A style of a family of its own under construction. */
  public StyleMaker style(String name, String family) {
    return new StyleMaker(name, family);
  }

  /** Adds styles, one after the other. */
  public final class StyleMaker {
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

    private StyleMaker(String name, String family) {
      this.name = name;
      this.family = family;
    }

    /** Pieces and price of a pack. */
    public StyleMaker pack(int pieces, String money) {
      perPack = pieces;
      price = Optional.of(new BigDecimal(money));
      return this;
    }

    /** Counted in packs. */
    public StyleMaker countedInPacks() {
      packs = true;
      return this;
    }

    /** Carry at least. */
    public StyleMaker floor(int pieces) {
      floor = OptionalInt.of(pieces);
      return this;
    }

    /** Needed at once and spare factor. */
    public StyleMaker atOnce(int pieces, double spareFactor) {
      atOnce = pieces;
      factor = spareFactor;
      return this;
    }

    /** Importance. */
    public StyleMaker importance(double weight) {
      importance = weight;
      return this;
    }

    /** Chance wanted. */
    public StyleMaker wanted(double probability) {
      wanted = OptionalDouble.of(probability);
      return this;
    }

    /** Adds it. */
    public SeasonMaker add() {
      styles.add(
          new Style(
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
              new Cell("Styles", styles.size() + 2, 1)));
      return SeasonMaker.this;
    }
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
    boxes.add(SeasonSketch.box(name, compartment));
    return this;
  }

  /** The item's own floor. */
  public SeasonMaker itemFloor(String style, String colour, int pieces) {
    floors.put(new ItemId(style, "", colour), OptionalInt.of(pieces));
    return this;
  }

  /** A trip with hours of one style. */
  public SeasonMaker trip(String id, LocalDate date, double fished, String style, double thrown) {
    trips.add(new Trip(id, date, OptionalDouble.of(fished), 1, Optional.empty(), Cell.NOWHERE));
    hours.add(new StyleHours(id, style, thrown, Cell.NOWHERE));
    return this;
  }

  /** A loss. */
  public SeasonMaker loss(String trip, String style, String colour, int pieces, Cause cause) {
    losses.add(new Loss(trip, new ItemId(style, "", colour), pieces, cause, false, Cell.NOWHERE));
    return this;
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
    events.add(
        new Event(
            name,
            date,
            "",
            hoursAfloat,
            days,
            Optional.empty(),
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

  /** The season. */
  public Season season() {
    SeasonSketch sketch = new SeasonSketch();
    sketch.asOf = AS_OF;
    sketch.carryAtLeast = carryAtLeast;
    sketch.chance = chance;
    sketch.chanceFromCommandLine = commandLine;
    sketch.budget = budget;
    sketch.styles = styles;
    sketch.boxes = boxes;
    sketch.compartments = List.of(compartment("Bow", false), compartment("Garage", true));
    sketch.trips = trips;
    sketch.styleHours = hours;
    sketch.losses = losses;
    sketch.events = events;
    return sketch.season();
  }

  private static Compartment compartment(String name, boolean ashore) {
    return new Compartment(
        name,
        AT,
        SIDE,
        Optional.empty(),
        Optional.empty(),
        false,
        ashore,
        Cell.NOWHERE,
        Cell.NOWHERE);
  }

  /** Pieces on hand. */
  public OnHand onHand() {
    Map<ItemId, ItemStock> items = new LinkedHashMap<>();
    for (Holding holding : holdings) {
      Style style =
          styles.stream()
              .filter(one -> one.name().equals(holding.item().style()))
              .findFirst()
              .orElseThrow();
      ItemStock piece =
          new ItemStock(
              holding.item(),
              holding.ashore() ? 0 : holding.pieces(),
              holding.ashore() ? holding.pieces() : 0,
              floors.getOrDefault(holding.item(), OptionalInt.empty()),
              style.packPrice(),
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
