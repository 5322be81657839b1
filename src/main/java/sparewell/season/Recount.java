package sparewell.season;

import java.time.LocalDate;
import sparewell.finding.Cell;

/** Pieces of an item counted in a place at the end of a day. */
public record Recount(LocalDate date, ItemId item, Place place, int countedPieces, Cell origin) {}
