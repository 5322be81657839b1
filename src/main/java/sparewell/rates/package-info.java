/**
 * Loss rates per style and the distribution of coming losses, with their uncertainty.
 *
 * <p>{@link sparewell.rates.LossModel} joins what was logged ({@code rates.history}) with a fit
 * that knows no names ({@code rates.fit}); other packages ask it through {@link
 * sparewell.rates.LossForecast}. What to carry is not decided here.
 */
package sparewell.rates;
