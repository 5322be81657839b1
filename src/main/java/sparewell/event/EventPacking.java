package sparewell.event;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import sparewell.finding.Finding;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.stock.OnHand;
import sparewell.stock.PieceMove;

/**
 * Packing lists of the events that are planned together.
 *
 * @param lines what to do, from the top down: what is taken out of the boxes first, then event by
 *     event what stays, what goes in, what stays elsewhere, what is nowhere to be had
 * @param packed what will be on hand once that is done
 */
public record EventPacking(
    List<PackingList> lists, List<Line> lines, OnHand packed, List<Finding> findings) {
  public EventPacking {
    lists = List.copyOf(lists);
    lines = List.copyOf(lines);
    findings = List.copyOf(findings);
  }

  /**
   * The list of one event.
   *
   * @param boxed whether its box is packed; without one the list names the pieces to have at hand
   * @param packedFirst an earlier event whose turn the box has; then there are no lines yet
   * @param slots pockets of the box; absent where their number is not given
   * @param slotsUsed pockets filled; a pocket holds pieces of one item, or one pack of a style
   *     counted in packs
   */
  public record PackingList(
      Event event,
      boolean boxed,
      Optional<Event> packedFirst,
      OptionalInt slots,
      int slotsUsed,
      List<Line> lines) {
    public PackingList {
      lines = List.copyOf(lines);
    }

    public int pieces(Action action) {
      return lines.stream().filter(line -> line.action() == action).mapToInt(Line::pieces).sum();
    }

    public int shortPieces() {
      return pieces(Action.BUY);
    }
  }

  public enum Action {
    /** Out of the event's box. */
    TAKE_OUT,
    /** Pieces in the box already: wanted, or in nothing's way, as a pocket is free for it. */
    LEAVE,
    /** Into the event's box, or aboard where no box is packed. */
    PUT_IN,
    /** Wanted, but aboard elsewhere: no pocket is left, or no box is packed. */
    STAYS_ABOARD,
    /** Wanted, and nowhere to be had. */
    BUY;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Pieces of one item in one place.
   *
   * @param from where they lie by then; absent where there are none, {@link PieceMove#OF_CHOICE}
   *     where the angler chose to put them
   * @param to where they go; absent where they stay
   * @param slots pockets that they fill, those shared with a line above not counted again
   * @param runOutProbability chance that the event costs more of the item than is aboard by then
   */
  public record Line(
      String event,
      ItemId item,
      Action action,
      int pieces,
      Optional<Place> from,
      Optional<Place> to,
      int slots,
      double runOutProbability) {
    public int shortPieces() {
      return action == Action.BUY ? pieces : 0;
    }

    public Optional<PieceMove> move() {
      return to.map(there -> new PieceMove(item, pieces, from, there));
    }
  }
}
