package sparewell.stow;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.units.Mass;

/**
 * A box aboard and where it should go.
 *
 * @param box name of the box
 * @param weight box and contents, as far as known
 * @param weightKnown whether all of it is known
 * @param fromCompartment where it stands now
 * @param toCompartment where the recommended plan puts it; the same where it is not moved
 * @param step order of its move in the recommended plan, from 1; absent where it is not moved
 * @param bestCompartment where the best plan puts it; absent where there is no plan
 * @param reason why it is moved or not
 * @param reachMinutes what it costs a day to reach it if it does not stand at hand, minutes; absent
 *     where no hours are known
 * @param origin its row
 */
public record BoxPlan(
    String box,
    Mass weight,
    boolean weightKnown,
    String fromCompartment,
    String toCompartment,
    OptionalInt step,
    Optional<String> bestCompartment,
    Reason reason,
    OptionalDouble reachMinutes,
    Cell origin) {
  /** True if the recommended plan moves it. */
  public boolean moves() {
    return step.isPresent();
  }
}
