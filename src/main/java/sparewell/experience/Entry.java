package sparewell.experience;

import java.util.Comparator;

/**
 * One row of experience: the likelihood of one log for one quantity, its prior divided out.
 *
 * <p>For styles the likelihood is that of y pieces lost in h hours, Poisson; it is stored as
 * estimate ln((y + &frac12;)/h) with variance 1/(y + &frac12;), the log incidence rate with half an
 * event added, from which y and h can be recovered. Other likelihoods are normal on the log scale.
 *
 * @param fingerprint of the workbook's contents; equal for copies of one workbook
 * @param year of the log's last trip
 * @param family the style's family as the angler spells it; empty for other kinds
 * @param familyKey the same in the form in which names are compared
 * @param logEstimate the estimate, ln of the unit
 */
public record Entry(
    String logId,
    String fingerprint,
    int year,
    Key key,
    String name,
    String family,
    String familyKey,
    double logEstimate,
    double logVariance,
    int trips,
    double hours,
    int pieces) {
  /** Least estimate accepted, ln of the unit. */
  public static final double LEAST_ESTIMATE = -9;

  /** Largest estimate accepted, ln of the unit. */
  public static final double MOST_ESTIMATE = 4;

  /** Least variance used: one log counts for at most 25 pieces lost. */
  public static final double LEAST_VARIANCE = 1 / 25.0;

  public static final double MOST_VARIANCE = 50;

  /** Order of rows of one log on one quantity: the one with most data comes last. */
  public static final Comparator<Entry> BY_WEALTH =
      Comparator.comparingInt(Entry::trips)
          .thenComparingDouble(Entry::hours)
          .thenComparingInt(Entry::pieces)
          .thenComparingInt(Entry::year)
          .thenComparing(Entry::fingerprint)
          .thenComparingDouble(Entry::logEstimate)
          .thenComparingDouble(Entry::logVariance);
}
