/**
 * Distributions, quantiles and optimisers over plain doubles.
 *
 * <p>No word of tackle here; imports Commons Math and nothing of the project.
 */
package sparewell.numerics;
