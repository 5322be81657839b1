package sparewell.season;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Cell;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.UnitSystem;

/** A season to be altered field by field: an empty one under usual settings, or another's. */
public class SeasonSketch {
  public UnitSystem units = UnitSystem.US;
  public LocalDate asOf = LocalDate.of(2026, 3, 1);
  public int carryAtLeast = 3;
  public Optional<LocalDate> stockCountedOn = Optional.empty();
  public double chance = 0.95;
  public boolean chanceFromCommandLine;
  public double planningHours = 24;
  public double planningDays = 3;
  public double leadTimeDays = 7;
  public Optional<BigDecimal> budget = Optional.empty();
  public double fillFactor = 0.85;
  public OptionalDouble sideToleranceKgM = OptionalDouble.empty();
  public Cell sideToleranceAt = new Cell("Settings", 2, 2);
  public Length reachWorth = Length.of(0.25, LengthUnit.MILLIMETRE);
  public double idleAfterMonths = 12;
  public OptionalDouble halfLifeMonths = OptionalDouble.empty();
  public List<Style> styles = new ArrayList<>();
  public List<StockRow> stock = new ArrayList<>();
  public List<Box> boxes = new ArrayList<>();
  public List<Compartment> compartments = new ArrayList<>();
  public List<Trip> trips = new ArrayList<>();
  public List<StyleHours> styleHours = new ArrayList<>();
  public List<Loss> losses = new ArrayList<>();
  public List<Restock> restocks = new ArrayList<>();
  public List<Transfer> transfers = new ArrayList<>();
  public List<BoxMove> boxMoves = new ArrayList<>();
  public List<Recount> recounts = new ArrayList<>();
  public List<Event> events = new ArrayList<>();
  public List<FixedLoad> loads = new ArrayList<>();
  public Boat boat = Boat.UNKNOWN;

  /** Sketch of a season. */
  public static SeasonSketch of(Season season) {
    SeasonSketch sketch = new SeasonSketch();
    Settings settings = season.settings();
    sketch.units = settings.units();
    sketch.asOf = settings.asOf();
    sketch.carryAtLeast = settings.carryAtLeast();
    sketch.stockCountedOn = settings.stockCountedOn();
    sketch.chance = settings.chanceWantedProbability();
    sketch.chanceFromCommandLine = settings.chanceFromCommandLine();
    sketch.planningHours = settings.planningHours();
    sketch.planningDays = settings.planningDays();
    sketch.leadTimeDays = settings.leadTimeDays();
    sketch.budget = settings.budget();
    sketch.fillFactor = settings.fillFactorShare();
    settings
        .sideTolerance()
        .ifPresent(set -> sketch.sideToleranceKgM = OptionalDouble.of(set.kgM()));
    sketch.reachWorth = settings.reachWorth();
    sketch.idleAfterMonths = settings.idleAfterMonths();
    sketch.halfLifeMonths = settings.halfLifeMonths();
    sketch.styles = season.styles();
    sketch.stock = season.stock();
    sketch.boxes = season.boxes();
    sketch.compartments = season.compartments();
    sketch.trips = season.trips();
    sketch.styleHours = season.styleHours();
    sketch.losses = season.losses();
    sketch.restocks = season.restocks();
    sketch.transfers = season.transfers();
    sketch.boxMoves = season.boxMoves();
    sketch.recounts = season.recounts();
    sketch.events = season.events();
    sketch.loads = season.loads();
    sketch.boat = season.boat();
    return sketch;
  }

  /** The season as it stands. */
  public Season season() {
    Settings settings =
        new Settings(
            units,
            asOf,
            carryAtLeast,
            stockCountedOn,
            chance,
            chanceFromCommandLine,
            planningHours,
            planningDays,
            leadTimeDays,
            budget,
            "USD",
            fillFactor,
            sideToleranceKgM.isPresent()
                ? Optional.of(
                    new Settings.SideTolerance(sideToleranceKgM.getAsDouble(), sideToleranceAt))
                : Optional.empty(),
            reachWorth,
            idleAfterMonths,
            halfLifeMonths,
            new Settings.LabelPage(
                Length.of(63, LengthUnit.MILLIMETRE), Length.of(34, LengthUnit.MILLIMETRE), 3, 8));
    return new Season(
        settings,
        styles,
        stock,
        boxes,
        compartments,
        trips,
        styleHours,
        losses,
        restocks,
        transfers,
        boxMoves,
        recounts,
        events,
        loads,
        boat);
  }
}
