package sparewell.rates.fit;

import java.util.List;

/**
 * Beliefs from other logs before the first trip of this one. Then each style is a family of its
 * own: what a family's mean rate is to other styles, the others' typical rate is to this angler's.
 *
 * @param families typical log rate per hour in each family, to which the common log rate adds;
 *     empty where no other log is known
 * @param covers log multiplier of each category of cover, against the mix of covers of the other
 *     logs; empty likewise
 */
public record Beliefs(List<Belief> families, List<Belief> covers) {
  /** No other log is known. */
  public static final Beliefs NONE = new Beliefs(List.of(), List.of());

  private static final double UNLIKE = 3.5;

  /**
   * A normal distribution on the log scale.
   *
   * @param logCentre its mean
   * @param logSpread its standard deviation, &gt; 0
   */
  public record Belief(double logCentre, double logSpread) {
    public Belief {
      if (!Double.isFinite(logCentre) || !(logSpread > 0)) {
        throw new IllegalArgumentException("centre " + logCentre + ", spread " + logSpread);
      }
    }
  }

  public Beliefs {
    families = List.copyOf(families);
    covers = List.copyOf(covers);
  }

  boolean known() {
    return !families.isEmpty();
  }

  /**
   * Variance added to the common log rate of an angler whom the others tell nothing of: next to
   * nothing among those like them, beyond {@link #UNLIKE} scales (one in sixty) as much as the weak
   * prior leaves open. Its own log then wins at once, while intervals of the rest stay narrow.
   */
  static double unlike(double z) {
    return Hyperprior.WEAK.logRateSpread() * Math.pow(z / UNLIKE, 3);
  }

  /** Typical log rate of a family beside the common one. */
  double familyCentre(int family) {
    return known() ? families.get(family).logCentre() : 0;
  }

  /** Standard deviation of a family's log mean rate, where families differ by so much. */
  double familySpread(int family, double common) {
    return known() ? Math.hypot(common, families.get(family).logSpread()) : common;
  }
}
