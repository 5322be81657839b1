/**
 * The fitted hierarchy of loss rates, free of names: from {@link sparewell.rates.fit.FitInput} to
 * {@link sparewell.rates.fit.RateFit}; for a log that grows, {@link
 * sparewell.rates.fit.RollingFit}.
 *
 * <p>From the inside out: {@code StyleHistory} (likelihood of a style), {@code RateNodes} and
 * {@code FamilyPosterior} (quadrature over rates and family means), {@code HyperPosterior} (draws
 * of the hyperparameters), {@code Wander} (from the log to the next trip), {@code LossPrediction}.
 */
package sparewell.rates.fit;
