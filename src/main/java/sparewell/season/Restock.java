package sparewell.season;

import java.time.LocalDate;
import sparewell.finding.Cell;

/** Pieces added to a place on a date. */
public record Restock(LocalDate date, ItemId item, Place place, int addedPieces, Cell origin) {}
