/**
 * Which box goes into which compartment, with what is proven about it and in how few moves.
 *
 * <p>Reads a season and what is on hand, gives a {@link sparewell.stow.StowPlan}. The search works
 * on the whole numbers of {@code StowProblem} and knows no names. Plate, trim and heel are load's.
 */
package sparewell.stow;
