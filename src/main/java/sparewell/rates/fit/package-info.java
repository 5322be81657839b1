/**
 * The fitted hierarchy of loss rates, free of names: from {@link sparewell.rates.fit.FitInput} to
 * {@link sparewell.rates.fit.RateFit}, from which to read on downward.
 *
 * <p>From the inside out: {@code FitData} and {@code StyleData} (the grid of log rates, the
 * likelihood of a style on it), {@code Conditional} (rates and family means at one set of
 * hyperparameters), {@code HyperPosterior} (weighted draws of these), {@code RandomWalk} (from the
 * log to the trips ahead), {@code Stretch} (losses), {@code RateFutures} (joint futures).
 */
package sparewell.rates.fit;
