package sparewell.season;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.units.Mass;

/**
 * A box or bag.
 *
 * @param compartment the compartment it stands in on the date of analysis
 * @param size outer size, where all three are known
 * @param atHand whether it must stand in a compartment at hand
 */
public record Box(
    String name,
    String compartment,
    Optional<Dimensions> size,
    Optional<Mass> emptyWeight,
    String tapeColour,
    boolean staysPut,
    boolean atHand,
    Optional<LocalDate> lastChecked,
    OptionalInt checkEveryDays,
    Cell origin) {
  public Box in(String otherCompartment) {
    return with(otherCompartment, lastChecked);
  }

  /** Copy checked on a date; a later check remains its last. */
  public Box checked(LocalDate date) {
    return with(
        compartment, lastChecked.filter(last -> last.isAfter(date)).or(() -> Optional.of(date)));
  }

  private Box with(String where, Optional<LocalDate> checked) {
    return new Box(
        name,
        where,
        size,
        emptyWeight,
        tapeColour,
        staysPut,
        atHand,
        checked,
        checkEveryDays,
        origin);
  }
}
