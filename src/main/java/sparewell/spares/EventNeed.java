package sparewell.spares;

import java.util.List;
import sparewell.numerics.CountDistribution;
import sparewell.season.Event;
import sparewell.season.ItemId;

/** Needs of one event alone. */
public record EventNeed(Event event, List<Item> items) {
  public EventNeed {
    items = List.copyOf(items);
  }

  /**
   * One item of the event.
   *
   * @param wanted pieces to have at hand: the least that gives the wanted chance, and one at least
   *     of what is planned and to be had
   */
  public record Item(
      ItemId item, CountDistribution losses, double importance, boolean inPlan, int wanted) {}
}
