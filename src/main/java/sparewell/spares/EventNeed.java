package sparewell.spares;

import java.util.List;
import sparewell.numerics.CountDistribution;
import sparewell.season.Event;
import sparewell.season.ItemId;

/**
 * Needs of one event alone.
 *
 * @param items the items it uses, in the order of the workbook
 */
public record EventNeed(Event event, List<Item> items) {
  public EventNeed {
    items = List.copyOf(items);
  }

  /**
   * One item of the event.
   *
   * @param losses pieces lost at the event
   * @param importance weight of a missing piece
   * @param inPlan whether the event's plan names it
   * @param wanted pieces to have at hand: the least that gives the wanted chance, and one at least
   *     of what is planned and to be had
   */
  public record Item(
      ItemId item, CountDistribution losses, double importance, boolean inPlan, int wanted) {}
}
