package sparewell.stow;

import java.util.OptionalInt;

/**
 * One instruction; carried out in order, no compartment is ever filled beyond its limits by it.
 *
 * @param kind what is done
 * @param number number of the move, from 1; of a swap its first (the other box has the next);
 *     absent for lifting out
 * @param box the box
 * @param from where it is taken from
 * @param to where it goes; for lifting out, where it goes later
 * @param swappedWith the other box of a swap, which goes the opposite way; empty otherwise
 * @param overSide whether the tackle then pulls to a side more than the tolerance and than now
 */
public record MoveStep(
    Kind kind,
    OptionalInt number,
    String box,
    String from,
    String to,
    String swappedWith,
    boolean overSide) {
  /** Action on the box. */
  public enum Kind {
    /** It goes to its new compartment. */
    MOVE,
    /** Two boxes change places; both are lifted out first. */
    SWAP,
    /** It is lifted out and set down outside the compartments, since others need its room. */
    LIFT_OUT,
    /** It goes from outside to its new compartment. */
    PUT_IN
  }
}
