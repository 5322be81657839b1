package sparewell.season;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.units.Mass;

/**
 * A counted stock of one item in one place; weight, price and floor where they differ from the
 * style's.
 *
 * @param countedOn date of the count; absent means the count is current
 */
public record StockRow(
    ItemId item,
    Place place,
    int countedPieces,
    Optional<Mass> weightEach,
    Optional<BigDecimal> packPrice,
    OptionalInt carryAtLeast,
    Optional<LocalDate> countedOn,
    Cell origin) {}
