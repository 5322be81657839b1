package sparewell.stow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.season.Boat;
import sparewell.season.Box;
import sparewell.season.Compartment;
import sparewell.season.Dimensions;
import sparewell.season.FixedLoad;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.SeasonSketch;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;

/** Builds small boats by hand, in kg and cm. */
public final class Boats extends SeasonSketch {
  private final List<Holding> holdings = new ArrayList<>();

  public Boats() {
    units = UnitSystem.METRIC;
  }

  /** A compartment; {@code size} in cm, empty for not known; {@code maxKg} 0 for not known. */
  public Boats compartment(
      String name, double station, double offset, double maxKg, double... size) {
    return compartment(name, station, offset, maxKg, false, false, size);
  }

  /** A compartment, at hand or ashore. */
  public Boats compartment(
      String name,
      double station,
      double offset,
      double maxKg,
      boolean atHand,
      boolean ashore,
      double... size) {
    compartments.add(
        new Compartment(
            name,
            cm(station),
            cm(offset),
            size(size),
            maxKg > 0 ? Optional.of(kg(maxKg)) : Optional.empty(),
            atHand,
            ashore,
            new Cell("Compartments", compartments.size() + 2, 2),
            new Cell("Compartments", compartments.size() + 2, 1)));
    return this;
  }

  /** A box that may be moved. */
  public Boats box(String name, String compartment, double weight, double... size) {
    return box(name, compartment, Optional.of(kg(weight)), false, false, size);
  }

  /** A box. */
  public Boats box(
      String name,
      String compartment,
      Optional<Mass> weight,
      boolean staysPut,
      boolean atHand,
      double... size) {
    boxes.add(
        new Box(
            name,
            compartment,
            size(size),
            weight,
            "",
            staysPut,
            atHand,
            Optional.empty(),
            OptionalInt.empty(),
            new Cell("Boxes", boxes.size() + 2, 1)));
    return this;
  }

  /** Stock in a box, or loose where the box is empty; {@code eachKg} 0 for not known. */
  public Boats stock(String style, String box, String compartment, int pieces, double eachKg) {
    boolean ashore =
        compartments.stream().anyMatch(place -> place.name().equals(compartment) && place.ashore());
    holdings.add(
        new Holding(
            new ItemId(style, "", ""),
            new Place(box, compartment),
            ashore,
            pieces,
            eachKg > 0 ? Optional.of(kg(eachKg)) : Optional.empty()));
    return this;
  }

  /** A load beside tackle. */
  public Boats load(String name, FixedLoad.Kind kind, double weight, double station, double side) {
    loads.add(
        new FixedLoad(
            name, kg(weight), cm(station), cm(side), kind, new Cell("Loads", loads.size() + 2, 1)));
    return this;
  }

  public Boats sideTolerance(double kgM) {
    sideToleranceKgM = OptionalDouble.of(kgM);
    return this;
  }

  public Boats boat(Boat newBoat) {
    boat = newBoat;
    return this;
  }

  public Boats units(UnitSystem newUnits) {
    units = newUnits;
    return this;
  }

  public OnHand onHand() {
    return new OnHand(holdings, List.of(), List.of());
  }

  public StowPlan plan() {
    return StowPlanner.plan(season(), onHand());
  }

  public static Length cm(double amount) {
    return Length.of(amount, LengthUnit.CENTIMETRE);
  }

  public static Mass kg(double amount) {
    return Mass.of(amount, MassUnit.KILOGRAM);
  }

  private static Optional<Dimensions> size(double... cm) {
    return cm.length == 3
        ? Optional.of(new Dimensions(cm(cm[0]), cm(cm[1]), cm(cm[2])))
        : Optional.empty();
  }
}
