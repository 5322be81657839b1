package sparewell.workbook;

import java.math.BigDecimal;
import java.util.Optional;

/** A wanted chance, typed as probability or percent, and the probability in (0, 1) it means. */
public record TypedChance(double typed, double probability) {
  private static final double LEAST_PERCENT = 50;
  private static final double MOST_PERCENT = 99.9;
  private static final double SLACK = 1e-9;

  /** Reads a number in (0, 1) as probability and 50 to 99.9 as percent; others are no chance. */
  public static Optional<TypedChance> of(double typed) {
    if (typed >= LEAST_PERCENT && typed <= MOST_PERCENT + SLACK) {
      // Shifted, not divided: 95 is the same number as 0.95.
      double shifted = new BigDecimal(Double.toString(typed)).movePointLeft(2).doubleValue();
      return Optional.of(new TypedChance(typed, shifted));
    }
    return typed > 0 && typed < 1 ? Optional.of(new TypedChance(typed, typed)) : Optional.empty();
  }

  public boolean isPercent() {
    return typed != probability;
  }
}
