package sparewell.load;

import java.util.Optional;
import sparewell.units.Mass;

/**
 * A line of the capacity plate and what is aboard against it. 33 CFR part 183 subpart B says what a
 * plate shows; a capacity is never computed here.
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
