package sparewell.load;

import java.util.Optional;
import sparewell.units.Mass;

/**
 * A box that stands against the trade's rule 'light forward, heavy aft' (common practice, no
 * source): heavier than the median box yet ahead of the middle of the compartments, or lighter yet
 * behind it.
 *
 * @param heavyForward true for too heavy so far forward, false for light so far aft
 * @param mainStyle the style that weighs most in it, where known
 * @param planMovesTo where the recommended plan moves it, if it does
 */
public record TradeNote(
    String box,
    Mass weight,
    String compartment,
    boolean heavyForward,
    Optional<String> mainStyle,
    Optional<String> planMovesTo) {}
