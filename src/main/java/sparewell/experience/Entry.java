package sparewell.experience;

import java.util.Comparator;

/**
 * One row of experience: what one log says of one thing, its prior divided out.
 *
 * <p>For styles the likelihood of the rate is that of y pieces lost in h hours by chance; it is
 * told as estimate ln((y + &frac12;)/h) with variance 1/(y + &frac12;), the log incidence rate with
 * half an event added, from which y and h come back. All other likelihoods are normal on the log
 * scale.
 *
 * @param logId random id of the log
 * @param fingerprint of the workbook's contents; equal for copies of one workbook
 * @param year of the log's last trip
 * @param key what it is about
 * @param name the same as the angler spells it
 * @param family the style's family as the angler spells it; empty for other kinds
 * @param familyKey the same in the form in which names are compared
 * @param logEstimate the estimate, ln of what the unit says
 * @param logVariance its variance, &gt; 0
 * @param trips trips behind it
 * @param hours hours behind it
 * @param pieces pieces lost behind it
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
  /** Least estimate believed: ln of the unit. */
  public static final double LEAST_ESTIMATE = -9;

  /** Largest estimate believed. */
  public static final double MOST_ESTIMATE = 4;

  /** Smallest variance believed: one log counts like this many pieces lost at most. */
  public static final double LEAST_VARIANCE = 1 / 25.0;

  /** Largest variance of use. */
  public static final double MOST_VARIANCE = 50;

  /** Among rows of one log on one thing, the one that rests on most comes last. */
  public static final Comparator<Entry> BY_WEALTH =
      Comparator.comparingInt(Entry::trips)
          .thenComparingDouble(Entry::hours)
          .thenComparingInt(Entry::pieces)
          .thenComparingInt(Entry::year)
          .thenComparing(Entry::fingerprint)
          .thenComparingDouble(Entry::logEstimate)
          .thenComparingDouble(Entry::logVariance);
}
