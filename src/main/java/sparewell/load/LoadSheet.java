package sparewell.load;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.load.LoadReport.Choice;
import sparewell.load.LoadReport.PlateLine;
import sparewell.load.LoadReport.SummaryRow;
import sparewell.season.Boat;
import sparewell.season.BoatBounds;
import sparewell.season.Box;
import sparewell.season.Compartment;
import sparewell.season.Dimensions;
import sparewell.season.FixedLoad;
import sparewell.season.Season;
import sparewell.stock.OnHand;
import sparewell.stow.AboardLoads;
import sparewell.stow.BoxLoad;
import sparewell.stow.BoxPlan;
import sparewell.stow.LooseLoad;
import sparewell.stow.Moment;
import sparewell.stow.Refusal;
import sparewell.stow.StowPlan;
import sparewell.units.Length;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Adds up what is aboard and where, and compares it with the plate. */
public final class LoadSheet {
  private final Season season;
  private final OnHand onHand;
  private final StowPlan plan;
  private final UnitSystem units;
  private final Map<String, Box> boxes;
  private final Findings findings = new Findings();

  private LoadSheet(Season season, OnHand onHand, StowPlan plan) {
    this.season = season;
    this.onHand = onHand;
    this.plan = plan;
    units = season.settings().units();
    boxes = season.boxesByName();
  }

  /** The load sheet of a season as it stands, and what the plan would do to it. */
  public static LoadReport of(Season season, OnHand onHand, StowPlan plan) {
    return new LoadSheet(season, onHand, plan).report();
  }

  private LoadReport report() {
    Moment tackle = plan.now();
    boolean tackleKnown =
        plan.loads().boxes().stream().allMatch(BoxLoad::weightKnown)
            && plan.loads().loose().stream().allMatch(loose -> loose.unknownPieces() == 0);
    List<CompartmentLoad> compartments = compartments(tackle.weightKg());
    Moment loads = loads();
    Moment allUp = loads.plus(tackle);
    PlateLine total = plateTotal(tackleKnown);
    PlateLine persons =
        new PlateLine(season.boat().platePersonsWeight(), sum(FixedLoad.Kind.PERSON), true);
    plateFindings(total, persons);
    testFindings();
    Moment planned = allUp.minus(tackle).plus(plan.recommended());
    double aft = tackle.momentKgM() - plan.recommended().momentKgM();
    Optional<Length> bow = OwnTests.bowRise(season.boat().trimTest(), aft);
    Moment moving = moving();
    Optional<Choice> ashore =
        plan.recommendedMoves() == 0
            ? Optional.empty()
            : Optional.of(
                new Choice(
                    allUp.minus(moving),
                    total.marginKg().map(margin -> margin + moving.weightKg()),
                    Optional.empty(),
                    heel(allUp.minus(moving))));
    Choice asItIs = new Choice(allUp, total.marginKg(), Optional.empty(), heel(allUp));
    Choice asPlanned = new Choice(planned, total.marginKg(), bow, heel(planned));
    return new LoadReport(
        compartments,
        season.loads(),
        tackle,
        tackleKnown,
        allUp,
        total,
        persons,
        asItIs,
        asPlanned,
        ashore,
        moving.weightKg(),
        summary(tackle, total, persons, asItIs, asPlanned),
        TradeRule.notes(season, onHand, plan),
        boatPlan(tackle),
        findings.list());
  }

  private Optional<Double> heel(Moment allUp) {
    return onBoat(OwnTests.heelDegrees(season.boat().heelTest(), allUp.sideMomentKgM()));
  }

  /** A figure that rests on positions: none while one of them lies outside any boat. */
  private <T> Optional<T> onBoat(Optional<T> figure) {
    return withheld() ? Optional.empty() : figure;
  }

  private boolean withheld() {
    return plan.refusal().orElse(null) instanceof Refusal.Outside
        || season.loads().stream()
            .anyMatch(load -> BoatBounds.outside(load.fromTransom(), load.fromCentreline()));
  }

  private Moment loads() {
    Moment sum = Moment.NONE;
    for (FixedLoad load : season.loads()) {
      sum =
          sum.plus(
              Moment.of(
                  load.weight().in(MassUnit.KILOGRAM), load.fromTransom(), load.fromCentreline()));
    }
    return sum;
  }

  private Mass sum(FixedLoad.Kind kind) {
    Mass sum = Mass.ZERO;
    for (FixedLoad load : season.loads()) {
      sum = load.kind() == kind ? sum.plus(load.weight()) : sum;
    }
    return sum;
  }

  /** Persons, gear, batteries, fuel and tackle; the motor where the plate counts it; no hull. */
  private PlateLine plateTotal(boolean tackleKnown) {
    Mass aboard = Mass.of(plan.now().weightKg(), MassUnit.KILOGRAM);
    for (FixedLoad.Kind kind : FixedLoad.Kind.values()) {
      boolean motor = kind == FixedLoad.Kind.MOTOR;
      boolean counts = motor ? season.boat().plateIncludesMotor() : kind != FixedLoad.Kind.HULL;
      aboard = counts ? aboard.plus(sum(kind)) : aboard;
    }
    return new PlateLine(season.boat().plateWeight(), aboard, tackleKnown);
  }

  private void plateFindings(PlateLine total, PlateLine persons) {
    Cell boat = Cell.ofSheet("Boat");
    if (total.plate().isEmpty()) {
      findings.add(Code.PLATE_NOT_CHECKED, boat, "plate weight");
    }
    if (persons.plate().isEmpty()) {
      findings.add(Code.PLATE_NOT_CHECKED, boat, "plate weight for persons");
    }
    over(Code.OVER_PLATE, total);
    over(Code.OVER_PLATE_PERSONS, persons);
    if (total.plate().isPresent() || persons.plate().isPresent()) {
      missing(FixedLoad.Kind.PERSON, "person");
      if (season.boat().plateIncludesMotor() && total.plate().isPresent()) {
        missing(FixedLoad.Kind.MOTOR, "motor");
      }
    }
  }

  private void over(Code code, PlateLine line) {
    if (line.over()) {
      findings.add(
          code,
          Cell.ofSheet("Boat"),
          line.weightKnown() ? "" : " at least",
          Spoken.mass(line.aboard(), units),
          Spoken.mass(line.marginKg().orElseThrow(), units),
          Spoken.mass(line.plate().orElseThrow(), units));
    }
  }

  private void missing(FixedLoad.Kind kind, String word) {
    if (sum(kind).milligrams() == 0) {
      findings.add(Code.PLATE_WITHOUT_LOADS, Cell.ofSheet("Loads"), word);
    }
  }

  private void testFindings() {
    Boat boat = season.boat();
    Cell at = Cell.ofSheet("Boat");
    if (boat.trimTest().isPresent() && !OwnTests.usable(boat.trimTest().get())) {
      findings.add(Code.TEST_NOT_USABLE, at, "trim", "weight, distance or change is zero");
    }
    if (boat.heelTest().isPresent() && !OwnTests.usable(boat.heelTest().get())) {
      String why = "weight, distance or angle is zero, or the angle is 15 degrees or more";
      findings.add(Code.TEST_NOT_USABLE, at, "heel", why);
    }
  }

  /** The boxes that the recommended plan moves, where they stand now. */
  private Moment moving() {
    Map<String, Compartment> places = season.compartmentsByName();
    Moment sum = Moment.NONE;
    for (BoxPlan box : plan.boxes()) {
      if (box.moves()) {
        Compartment place = places.get(box.fromCompartment());
        double weight = box.weight().in(MassUnit.KILOGRAM);
        sum = sum.plus(Moment.of(weight, place.fromTransom(), place.fromCentreline()));
      }
    }
    return sum;
  }

  private List<CompartmentLoad> compartments(double tackleKg) {
    Map<String, Mass> today = weights(AboardLoads.of(season, onHand));
    Map<String, Mass> packed = weights(plan.loads());
    return season.compartments().stream()
        .filter(place -> !place.ashore())
        .sorted(Comparator.comparing(Compartment::fromTransom).thenComparing(Compartment::name))
        .map(
            place ->
                row(
                    place,
                    today.getOrDefault(place.name(), Mass.ZERO),
                    packed.getOrDefault(place.name(), Mass.ZERO),
                    tackleKg))
        .toList();
  }

  private static Map<String, Mass> weights(AboardLoads loads) {
    Map<String, Mass> weights = new HashMap<>();
    loads.boxes().forEach(box -> weights.merge(box.compartment(), box.weight(), Mass::plus));
    loads.loose().forEach(one -> weights.merge(one.compartment(), one.weight(), Mass::plus));
    return weights;
  }

  private CompartmentLoad row(Compartment place, Mass today, Mass weight, double tackleKg) {
    List<BoxLoad> here =
        plan.loads().boxes().stream()
            .filter(box -> box.compartment().equals(place.name()))
            .toList();
    Optional<LooseLoad> loose =
        plan.loads().loose().stream()
            .filter(one -> one.compartment().equals(place.name()))
            .findFirst();
    boolean known =
        here.stream().allMatch(BoxLoad::weightKnown)
            && loose.filter(one -> one.unknownPieces() > 0).isEmpty();
    Mass planned =
        plan.boxes().stream()
            .filter(box -> box.toCompartment().equals(place.name()))
            .map(BoxPlan::weight)
            .reduce(loose.map(LooseLoad::weight).orElse(Mass.ZERO), Mass::plus);
    double kg = weight.in(MassUnit.KILOGRAM);
    List<Optional<Dimensions>> sizes =
        here.stream().map(box -> boxes.get(box.box()).size()).toList();
    OptionalDouble volume = volumePercent(place, sizes);
    boolean sized = place.size().isPresent() && sizes.stream().allMatch(Optional::isPresent);
    return new CompartmentLoad(
        place.name(),
        here.size(),
        today,
        weight,
        planned,
        known,
        tackleKg > 0 ? OptionalDouble.of(100 * kg / tackleKg) : OptionalDouble.empty(),
        at(place),
        place.size(),
        Moment.of(kg, place.fromTransom(), place.fromCentreline()),
        place.maxLoad(),
        volume,
        checks(place, weight, known, volume, sized),
        place.origin());
  }

  private static OptionalDouble volumePercent(Compartment place, List<Optional<Dimensions>> sizes) {
    double volumeM3 = 0;
    for (Optional<Dimensions> size : sizes) {
      volumeM3 += size.map(Dimensions::volumeM3).orElse(0.0);
    }
    return place.size().isPresent()
        ? OptionalDouble.of(100 * volumeM3 / place.size().get().volumeM3())
        : OptionalDouble.empty();
  }

  private List<CompartmentLoad.Check> checks(
      Compartment place, Mass weight, boolean weighed, OptionalDouble volume, boolean sized) {
    List<CompartmentLoad.Check> checks = new ArrayList<>();
    boolean overLoad = place.maxLoad().filter(most -> weight.compareTo(most) > 0).isPresent();
    double limit = 100 * season.settings().fillFactorShare() * (1 + 1e-6);
    boolean overVolume = volume.orElse(0) > limit;
    if (overLoad) {
      checks.add(CompartmentLoad.Check.OVER_LOAD);
    }
    if (overVolume) {
      checks.add(CompartmentLoad.Check.OVER_VOLUME);
    }
    boolean loadChecked = overLoad || place.maxLoad().isPresent() && weighed;
    if (!loadChecked || !(overVolume || sized)) {
      checks.add(CompartmentLoad.Check.NOT_CHECKED);
    }
    return checks;
  }

  /** Nothing to draw where a position lies outside any boat. */
  private Optional<BoatPlan> boatPlan(Moment tackle) {
    return plan.refusal().orElse(null) instanceof Refusal.Outside
        ? Optional.empty()
        : Optional.of(new BoatPlan(ways(), point(tackle), point(plan.recommended())));
  }

  private List<BoatPlan.Way> ways() {
    Map<String, Compartment> places = season.compartmentsByName();
    Map<List<String>, List<BoatPlan.Moved>> moved = new LinkedHashMap<>();
    for (BoxPlan box : plan.boxes()) {
      if (box.moves()) {
        moved
            .computeIfAbsent(
                List.of(box.fromCompartment(), box.toCompartment()), ends -> new ArrayList<>())
            .add(new BoatPlan.Moved(box.step().getAsInt(), box.box()));
      }
    }
    List<BoatPlan.Way> ways = new ArrayList<>();
    moved.forEach(
        (ends, boxes) ->
            ways.add(
                new BoatPlan.Way(at(places.get(ends.get(0))), at(places.get(ends.get(1))), boxes)));
    return ways;
  }

  private static BoatPlan.Point at(Compartment place) {
    return new BoatPlan.Point(place.fromTransom(), place.fromCentreline());
  }

  private static Optional<BoatPlan.Point> point(Moment moment) {
    return moment
        .centre()
        .map(station -> new BoatPlan.Point(station, moment.sideCentre().orElse(Length.ZERO)));
  }

  private List<SummaryRow> summary(
      Moment tackle, PlateLine total, PlateLine persons, Choice now, Choice planned) {
    SummaryRow.Kind mass = SummaryRow.Kind.MASS;
    SummaryRow.Kind length = SummaryRow.Kind.LENGTH;
    Moment allUp = now.allUp();
    List<SummaryRow> rows = new ArrayList<>();
    rows.add(new SummaryRow("tackle_weight", mass, Optional.of(kg(tackle.weightKg()))));
    rows.add(new SummaryRow("tackle_centre_from_transom", length, onBoat(tackle.centre())));
    rows.add(new SummaryRow("tackle_centre_from_centreline", length, onBoat(tackle.sideCentre())));
    rows.add(new SummaryRow("all_up_weight", mass, Optional.of(kg(allUp.weightKg()))));
    rows.add(new SummaryRow("all_up_centre_from_transom", length, onBoat(allUp.centre())));
    rows.add(new SummaryRow("all_up_centre_from_centreline", length, onBoat(allUp.sideCentre())));
    plate(rows, "plate", total);
    plate(rows, "plate_persons", persons);
    rows.add(new SummaryRow("best_tackle_centre", length, plan.best().flatMap(Moment::centre)));
    rows.add(new SummaryRow("bow_change_per_plan", length, planned.bowRise()));
    rows.add(new SummaryRow("heel_now_deg", SummaryRow.Kind.DEGREES, now.heelDegrees()));
    rows.add(new SummaryRow("heel_with_plan_deg", SummaryRow.Kind.DEGREES, planned.heelDegrees()));
    return rows;
  }

  private static Mass kg(double amount) {
    return Mass.of(amount, MassUnit.KILOGRAM);
  }

  private static void plate(List<SummaryRow> rows, String name, PlateLine line) {
    rows.add(new SummaryRow(name + "_weight", SummaryRow.Kind.MASS, line.plate()));
    rows.add(
        new SummaryRow(
            name + "_load", SummaryRow.Kind.MASS, line.plate().map(plate -> line.aboard())));
    rows.add(new SummaryRow(name + "_margin", SummaryRow.Kind.MASS_DIFFERENCE, line.marginKg()));
  }
}
