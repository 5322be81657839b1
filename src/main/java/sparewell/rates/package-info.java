/**
 * Loss rates per style and the distribution of coming losses, with their uncertainty.
 *
 * <p>From the log to numbers: {@code TripLog}, {@code SeasonHistory}, {@code ItemShares}. The fit,
 * free of names: from {@link sparewell.rates.FitInput} to {@link sparewell.rates.RateFit}. Both
 * joined: {@link sparewell.rates.LossModel}; replayed over the past: {@link
 * sparewell.rates.TrackRecord}. What to carry is not decided here.
 */
package sparewell.rates;
