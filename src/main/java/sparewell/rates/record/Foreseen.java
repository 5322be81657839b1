package sparewell.rates.record;

import sparewell.numerics.CountDistribution;
import sparewell.rates.history.StyleUse;

/**
 * Forecast of a style on a trip, and the outcome.
 *
 * @param use what happened, with the hours that were known of then
 * @param chanceProbability wanted chance that the pieces carried last
 * @param losses pieces lost as the fit foresaw them
 * @param byRawRate as the raw average so far did
 */
record Foreseen(
    StyleUse use,
    double chanceProbability,
    CountDistribution losses,
    CountDistribution byRawRate) {}
