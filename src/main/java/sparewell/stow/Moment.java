package sparewell.stow;

import java.util.Optional;
import sparewell.units.Length;
import sparewell.units.LengthUnit;

/**
 * Weight and moments of a load or of several together: moment = weight x arm, centre = sum of
 * moments / sum of weights, as on a load sheet.
 *
 * @param weightKg kg
 * @param momentKgM about the transom, forward positive, kg m
 * @param sideMomentKgM about the centreline, starboard positive, kg m
 * @see "FAA-H-8083-25, Pilot's Handbook of Aeronautical Knowledge, chapter on weight and balance"
 */
public record Moment(double weightKg, double momentKgM, double sideMomentKgM) {
  /** Nothing. */
  public static final Moment NONE = new Moment(0, 0, 0);

  /** A weight at a station and a side offset. */
  public static Moment of(double weightKg, Length fromTransom, Length fromCentreline) {
    return new Moment(
        weightKg,
        weightKg * fromTransom.in(LengthUnit.METRE),
        weightKg * fromCentreline.in(LengthUnit.METRE));
  }

  /** Both together. */
  public Moment plus(Moment other) {
    return new Moment(
        weightKg + other.weightKg,
        momentKgM + other.momentKgM,
        sideMomentKgM + other.sideMomentKgM);
  }

  /** This without a part of it. */
  public Moment minus(Moment part) {
    return new Moment(
        weightKg - part.weightKg, momentKgM - part.momentKgM, sideMomentKgM - part.sideMomentKgM);
  }

  /** Station of the centre; absent where nothing has weight. */
  public Optional<Length> centre() {
    return weightKg > 0
        ? Optional.of(Length.of(momentKgM / weightKg, LengthUnit.METRE))
        : Optional.empty();
  }

  /** Side offset of the centre; absent where nothing has weight. */
  public Optional<Length> sideCentre() {
    return weightKg > 0
        ? Optional.of(Length.of(sideMomentKgM / weightKg, LengthUnit.METRE))
        : Optional.empty();
  }
}
