package sparewell.workbook;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A wanted chance as somebody typed it.
 *
 * @param typed the number typed
 * @param probability what it means, in (0, 1)
 */
public record TypedChance(double typed, double probability) {
  private static final double LEAST_PERCENT = 50;
  private static final double MOST_PERCENT = 99.9;
  private static final double SLACK = 1e-9;

  /** A number in (0, 1) is a probability, 50 to 99.9 percent; all else is no chance. */
  public static Optional<TypedChance> of(double typed) {
    if (typed >= LEAST_PERCENT && typed <= MOST_PERCENT + SLACK) {
      // Shifted, not divided: 95 is the same number as 0.95.
      double shifted = new BigDecimal(Double.toString(typed)).movePointLeft(2).doubleValue();
      return Optional.of(new TypedChance(typed, shifted));
    }
    return typed > 0 && typed < 1 ? Optional.of(new TypedChance(typed, typed)) : Optional.empty();
  }

  /** Whether it was typed as percent. */
  public boolean isPercent() {
    return typed != probability;
  }
}
