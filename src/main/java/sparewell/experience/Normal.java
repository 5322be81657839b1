package sparewell.experience;

/**
 * A normal distribution, on the log scale.
 *
 * @param mean its mean
 * @param variance its variance, &gt; 0
 */
public record Normal(double mean, double variance) {}
