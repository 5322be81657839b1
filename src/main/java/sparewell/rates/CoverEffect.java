package sparewell.rates;

/**
 * Multiplier of loss rates in a category of cover, relative to the mix of covers logged.
 *
 * @param cover the category as first spelled
 * @param trips trips logged in it
 * @param multiplier posterior mean, &gt; 0
 * @param low90 5 % point
 * @param high90 95 % point
 */
public record CoverEffect(
    String cover, int trips, double multiplier, double low90, double high90) {}
