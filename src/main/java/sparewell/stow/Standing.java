package sparewell.stow;

import java.util.Optional;
import sparewell.units.Length;
import sparewell.units.LengthUnit;

/**
 * The tackle (boxes aboard with contents, and loose stock) as stowed in one way.
 *
 * @param weightKg its mass, kg
 * @param momentKgM sum of mass x station, kg m
 * @param sideMomentKgM sum of mass x side offset, starboard positive, kg m
 */
public record Standing(double weightKg, double momentKgM, double sideMomentKgM) {
  /** Station of its centre; absent where nothing has weight. */
  public Optional<Length> centre() {
    return weightKg > 0
        ? Optional.of(Length.of(momentKgM / weightKg, LengthUnit.METRE))
        : Optional.empty();
  }

  /** Side offset of its centre; absent where nothing has weight. */
  public Optional<Length> sideCentre() {
    return weightKg > 0
        ? Optional.of(Length.of(sideMomentKgM / weightKg, LengthUnit.METRE))
        : Optional.empty();
  }
}
