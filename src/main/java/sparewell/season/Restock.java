package sparewell.season;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import sparewell.finding.Cell;

/** Pieces added to a place on a date; {@code cost} is what was paid for the row, where known. */
public record Restock(
    LocalDate date,
    ItemId item,
    Place place,
    int addedPieces,
    Optional<BigDecimal> cost,
    Cell origin) {}
