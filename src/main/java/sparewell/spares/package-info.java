/**
 * Decisions from loss forecasts: over what stretch to plan, what to carry, what to bring aboard,
 * what to buy first.
 *
 * <p>Reads a season, what is on hand and a {@link sparewell.rates.LossForecast}, never the fitted
 * model behind it. No rate is estimated here.
 */
package sparewell.spares;
