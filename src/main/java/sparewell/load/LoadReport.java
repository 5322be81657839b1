package sparewell.load;

import java.util.List;
import java.util.Optional;
import sparewell.finding.Finding;
import sparewell.season.FixedLoad;
import sparewell.spares.IdleStyle;
import sparewell.stow.Moment;
import sparewell.units.Length;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/**
 * The load sheet.
 *
 * @param compartments every compartment aboard, from the stern forward, of equals by name
 * @param loads what is aboard beside tackle, as listed
 * @param tackle the tackle where it stands now, the boxes as packed
 * @param tackleKnown whether all its weight is known; else its weight is 'at least'
 * @param allUp everything aboard, hull included where listed
 * @param ashore the boat with the boxes that would move left ashore; absent where none moves
 * @param summary the quantities of the summary file, in its order
 * @param findings limits broken and what was not checked, apart from those of the stow plan
 */
public record LoadReport(
    List<CompartmentLoad> compartments,
    List<FixedLoad> loads,
    Moment tackle,
    boolean tackleKnown,
    Moment allUp,
    PlateLine plateTotal,
    PlateLine platePersons,
    Choice now,
    Choice planned,
    Optional<Choice> ashore,
    double movedKg,
    List<SummaryRow> summary,
    List<TradeNote> tradeNotes,
    Optional<BoatPlan> boatPlan,
    List<Finding> findings) {
  public LoadReport {
    compartments = List.copyOf(compartments);
    loads = List.copyOf(loads);
    summary = List.copyOf(summary);
    tradeNotes = List.copyOf(tradeNotes);
    findings = List.copyOf(findings);
  }

  /** Weight of the tackle as it lies today, before it is brought aboard, bought and packed. */
  public Mass tackleToday() {
    return compartments.stream().map(CompartmentLoad::today).reduce(Mass.ZERO, Mass::plus);
  }

  /** True where what is still to be packed changes a weight. */
  public boolean packs() {
    return compartments.stream().anyMatch(row -> !row.today().equals(row.weight()));
  }

  /** True where every position lies on a boat; else no centre and no picture is given. */
  public boolean placed() {
    return compartments.isEmpty() || boatPlan.isPresent();
  }

  /** The tackle once the idle styles are left ashore, by the moments they take along. */
  public Moment tackleWithout(List<IdleStyle> idle) {
    Moment rest = tackle;
    for (IdleStyle style : idle) {
      rest =
          rest.minus(
              new Moment(
                  style.knownWeight().in(MassUnit.KILOGRAM),
                  style.momentKgM(),
                  style.sideMomentKgM()));
    }
    return rest;
  }

  /**
   * The whole boat under one choice: as it is, with the plan carried out, or with the plan's boxes
   * left ashore.
   *
   * @param plateMarginKg margin to the plate's first line, kg; absent where not checked
   * @param bowRise rise of the bow against now; absent without a test, and where weight leaves the
   *     boat (the test does not tell that)
   * @param heelDegrees starboard down positive; absent without a test
   */
  public record Choice(
      Moment allUp,
      Optional<Double> plateMarginKg,
      Optional<Length> bowRise,
      Optional<Double> heelDegrees) {}

  /**
   * A line of the capacity plate and what is aboard against it. 33 CFR part 183 subpart B says what
   * a plate shows; a capacity is never computed here.
   *
   * @param plate the figure on the plate; absent where not given, and then nothing is checked
   * @param aboard what counts toward it, as far as known
   * @param weightKnown whether all that counts is known; else it is 'at least'
   */
  public record PlateLine(Optional<Mass> plate, Mass aboard, boolean weightKnown) {
    /** Plate less load, kg; negative where over; absent where not checked. */
    public Optional<Double> marginKg() {
      return plate.map(limit -> (limit.milligrams() - aboard.milligrams()) * 1e-6);
    }

    public boolean over() {
      return plate.isPresent() && aboard.compareTo(plate.get()) > 0;
    }
  }

  /**
   * One quantity of the load summary.
   *
   * @param value a {@link sparewell.units.Length}, a {@link sparewell.units.Mass}, or a number in
   *     kg or degrees; absent where not known
   */
  public record SummaryRow(String quantity, Kind kind, Optional<?> value) {
    public enum Kind {
      MASS,
      MASS_DIFFERENCE,
      LENGTH,
      DEGREES
    }
  }

  /**
   * A box that stands against the trade's rule 'light forward, heavy aft' (common practice, no
   * source): heavier than the median box yet ahead of the middle of the compartments, or lighter
   * yet behind it.
   *
   * @param heavyForward true for too heavy so far forward, false for light so far aft
   * @param mainStyle the style that weighs most in it, where known
   * @param planMovesTo where the recommended plan moves it, if it does
   */
  public record TradeNote(
      String box,
      Mass weight,
      String compartment,
      boolean heavyForward,
      Optional<String> mainStyle,
      Optional<String> planMovesTo) {}
}
