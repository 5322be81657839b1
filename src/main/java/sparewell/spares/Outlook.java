package sparewell.spares;

import java.util.List;
import java.util.OptionalDouble;
import sparewell.season.ItemId;

/**
 * Chance that nothing important runs out over the horizon. Important are the items used over the
 * horizon whose style has an importance of 1 or more; where no style used has, those above 0.
 *
 * @param watchedItems number of items that are important
 * @param full whether those are of an importance of 1 or more; else of one above 0
 * @param nowProbability with what is aboard now; absent where nothing is watched
 * @param afterBringingProbability with what lies ashore brought as planned
 * @param afterBuyingProbability with everything bought too, whatever the budget
 * @param holdingDown the items that hold the chance down most, worst first
 */
public record Outlook(
    int watchedItems,
    boolean full,
    OptionalDouble nowProbability,
    OptionalDouble afterBringingProbability,
    OptionalDouble afterBuyingProbability,
    List<Weak> holdingDown) {
  public Outlook {
    holdingDown = List.copyOf(holdingDown);
  }

  /**
   * An item that holds the chance down.
   *
   * @param aboard pieces aboard now
   * @param runOutProbability chance that it runs out with what is aboard
   */
  public record Weak(ItemId item, int aboard, double runOutProbability) {}
}
