package sparewell.stow;

import sparewell.units.Mass;

/**
 * A box with its contents, as far as their weight is known.
 *
 * @param box name of the box
 * @param compartment the compartment it stands in now
 * @param weight empty box and contents, as far as known: the true weight is at least this
 * @param unknownPieces pieces in it whose weight is not known
 * @param emptyWeightKnown whether the weight of the empty box is known
 */
public record BoxLoad(
    String box, String compartment, Mass weight, int unknownPieces, boolean emptyWeightKnown) {
  /** True if all of its weight is known. */
  public boolean weightKnown() {
    return emptyWeightKnown && unknownPieces == 0;
  }
}
