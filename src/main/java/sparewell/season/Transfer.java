package sparewell.season;

import java.time.LocalDate;
import sparewell.finding.Cell;

/** Pieces of an item carried from one place to a different one on a date. */
public record Transfer(
    LocalDate date, ItemId item, int carriedPieces, Place from, Place to, Cell origin) {}
