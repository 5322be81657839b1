package sparewell.event;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import sparewell.finding.Finding;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Place;

/**
 * What to pack for the events that are planned together.
 *
 * @param lists one for each event, in order of date
 * @param findings boxes that are too small
 */
public record EventPacking(List<PackingList> lists, List<Finding> findings) {
  public EventPacking {
    lists = List.copyOf(lists);
    findings = List.copyOf(findings);
  }

  /**
   * The list of one event.
   *
   * @param event which
   * @param slots pockets of its box; absent where it has no box or their number is not given
   * @param slotsUsed pockets filled; a pocket holds one piece, or one pack of a style counted in
   *     packs
   * @param slotsWanted pockets that everything wanted would fill
   * @param lines what to pack: what is in the box already, then place by place, last what cannot be
   *     packed
   */
  public record PackingList(
      Event event, OptionalInt slots, int slotsUsed, int slotsWanted, List<Line> lines) {
    public PackingList {
      lines = List.copyOf(lines);
    }

    /** Whether there is a box to pack; without one the list names the pieces to have at hand. */
    public boolean boxed() {
      return !event.box().isEmpty();
    }

    /** Pieces packed. */
    public int pieces() {
      return lines.stream().mapToInt(Line::pieces).sum();
    }

    /** Pieces that stay short. */
    public int shortPieces() {
      return lines.stream().mapToInt(Line::shortPieces).sum();
    }
  }

  /**
   * Pieces of one item from one place.
   *
   * @param event name of the event
   * @param item which
   * @param pieces how many; 0 where there are none to be had or no pocket is left
   * @param from where they lie now and go back to; absent where there are none
   * @param ashore whether that place is home storage
   * @param inBox whether they are in the event's box already
   * @param runOutProbability chance that the event costs more of the item than all that is packed
   * @param shortPieces pieces of the item wanted but not packed; stands in one line of the item
   * @param noSlot whether there would be more of the item on hand, but no pocket is left for it
   */
  public record Line(
      String event,
      ItemId item,
      int pieces,
      Optional<Place> from,
      boolean ashore,
      boolean inBox,
      double runOutProbability,
      int shortPieces,
      boolean noSlot) {}
}
