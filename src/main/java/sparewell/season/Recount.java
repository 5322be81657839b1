package sparewell.season;

import java.time.LocalDate;
import sparewell.finding.Cell;

/** What was counted of an item in a place, in pieces, at the end of a day. */
public record Recount(LocalDate date, ItemId item, Place place, int countedPieces, Cell origin) {}
