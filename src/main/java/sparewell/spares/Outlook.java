package sparewell.spares;

import java.util.OptionalDouble;

/**
 * Chance that nothing important runs out over the horizon. Important are the items used over the
 * horizon whose style has an importance of 1 or more; where no style used has, those above 0.
 *
 * @param watchedItems number of items that are important
 * @param full whether those are of an importance of 1 or more; else of one above 0
 * @param nowProbability with what is aboard now; absent where nothing is watched
 * @param afterBringingProbability with what lies ashore brought as planned
 * @param afterBuyingProbability with everything bought too, whatever the budget
 */
public record Outlook(
    int watchedItems,
    boolean full,
    OptionalDouble nowProbability,
    OptionalDouble afterBringingProbability,
    OptionalDouble afterBuyingProbability) {}
