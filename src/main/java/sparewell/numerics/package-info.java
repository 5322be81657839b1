/**
 * Distributions, quantiles and optimisers over plain doubles.
 *
 * <p>No word of tackle, no record of the project. What only the loss model needs is in rates.
 */
package sparewell.numerics;
