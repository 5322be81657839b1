package sparewell.rates;

import java.util.Optional;
import sparewell.experience.Club;
import sparewell.experience.Normal;

/**
 * A style's rate beside what other logs tell of it.
 *
 * @param othersShare share of the rate that comes from others' logs of the style, 0..1
 * @param familyShare share that comes from others' logs of its family or of any, 0..1
 * @param times how many times the others' typical rate the own one is; absent without own hours or
 *     where nobody else has the style
 */
public record AmongOthers(double othersShare, double familyShare, Optional<Times> times) {
  private static final double Z = 1.6448536269514722; // 95 % point of a standard normal

  /**
   * A ratio of rates.
   *
   * @param middle its median
   * @param low90 5 % point
   * @param high90 95 % point
   */
  public record Times(double middle, double low90, double high90) {
    /** True if the log says that the angler differs from others. */
    public boolean clear() {
      return low90 > 1 || high90 < 1;
    }
  }

  /**
   * Compares.
   *
   * @param ownShare share of the rate that comes from the own log
   * @param logLow ln of the 5 % point of the own rate per hour
   * @param logHigh ln of the 95 % point
   * @param thrown whether the own log has hours of the style
   */
  static AmongOthers of(
      Club.Typical typical, double ownShare, double logLow, double logHigh, boolean thrown) {
    double rest = 1 - ownShare;
    // The rows of the style itself narrow what its family says of it.
    double narrowed = Math.max(0, 1 - typical.log().variance() / typical.familyVariance());
    double others = typical.source() == Club.Source.STYLE ? rest * narrowed : 0;
    boolean comparable = thrown && typical.source() == Club.Source.STYLE;
    return new AmongOthers(
        others,
        rest - others,
        comparable ? Optional.of(times(typical.log(), logLow, logHigh)) : Optional.empty());
  }

  private static Times times(Normal typical, double logLow, double logHigh) {
    double middle = (logLow + logHigh) / 2 - typical.mean();
    double own = (logHigh - logLow) / (2 * Z);
    double wide = Z * Math.sqrt(own * own + typical.variance());
    return new Times(Math.exp(middle), Math.exp(middle - wide), Math.exp(middle + wide));
  }
}
