package sparewell.experience;

/** A normal distribution on the log scale, its variance &gt; 0. */
public record Normal(double mean, double variance) {}
