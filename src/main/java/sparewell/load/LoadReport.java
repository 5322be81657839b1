package sparewell.load;

import java.util.List;
import java.util.Optional;
import sparewell.finding.Finding;
import sparewell.season.FixedLoad;
import sparewell.spares.IdleStyle;
import sparewell.stow.Moment;
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

  /**
   * The tackle once the idle styles are left ashore, by the moments they take along.
   *
   * @param idle the styles; empty gives the tackle as it stands
   */
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
}
