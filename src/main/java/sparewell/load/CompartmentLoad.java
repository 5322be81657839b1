package sparewell.load;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Cell;
import sparewell.season.Dimensions;
import sparewell.stow.Moment;
import sparewell.units.Mass;

/**
 * Contents of a compartment aboard.
 *
 * @param today boxes with contents and loose stock as they lie today, as far as known
 * @param weight the same once the boxes are packed, before any is moved
 * @param plannedWeight the same after the recommended moves
 * @param weightKnown whether all of it is known; else the weight is 'at least'
 * @param sharePercent of the tackle's weight; absent where that is zero
 * @param volumeUsedPercent volume of its boxes as a share of its whole volume, where known; the
 *     fill factor is the limit
 * @param checks what is over or not checked; empty where all is well
 */
public record CompartmentLoad(
    String compartment,
    int boxes,
    Mass today,
    Mass weight,
    Mass plannedWeight,
    boolean weightKnown,
    OptionalDouble sharePercent,
    BoatPlan.Point centre,
    Optional<Dimensions> size,
    Moment moment,
    Optional<Mass> maxLoad,
    OptionalDouble volumeUsedPercent,
    List<Check> checks,
    Cell origin) {

  public enum Check {
    OVER_LOAD,
    OVER_VOLUME,
    NOT_CHECKED;

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** 'ok', or what can be said against it. */
  public String status() {
    return checks.isEmpty() ? "ok" : String.join(", ", checks.stream().map(Check::word).toList());
  }

  public boolean over() {
    return checks.contains(Check.OVER_LOAD) || checks.contains(Check.OVER_VOLUME);
  }
}
