package sparewell.season;

import sparewell.finding.Cell;

/**
 * Pieces of a style lost on a trip.
 *
 * @param item style, size and colour; size or colour may be empty or unknown among the stock
 * @param lostPieces &ge; 0
 * @param ranOut whether none was left, so that demand was at least the pieces logged
 */
public record Loss(
    String trip, ItemId item, int lostPieces, Cause cause, boolean ranOut, Cell origin) {}
