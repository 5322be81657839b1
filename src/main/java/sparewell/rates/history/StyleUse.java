package sparewell.rates.history;

/**
 * A style used on a trip.
 *
 * @param trip number of the trip in {@link SeasonHistory#trips()}
 * @param style number of the style
 * @param hours exposure, &gt; 0
 * @param lostPieces pieces lost, &ge; 0
 * @param ranOut whether none was left
 * @param assumed whether what is known of the style's hours leaves the trip out, so that its hours
 *     are assumed
 */
public record StyleUse(
    int trip, int style, double hours, int lostPieces, boolean ranOut, boolean assumed) {
  /** The same over other hours. */
  public StyleUse over(double otherHours) {
    return new StyleUse(trip, style, otherHours, lostPieces, ranOut, assumed);
  }
}
