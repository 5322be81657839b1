package sparewell.season;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Cell;

/**
 * A trip.
 *
 * @param id its name; its date where it has none
 * @param date its first day
 * @param fishedHours hours over all its days, &gt; 0; absent where blank or 0, which excludes the
 *     trip from the fit
 * @param days days it took, &gt; 0
 */
public record Trip(
    String id,
    LocalDate date,
    OptionalDouble fishedHours,
    double days,
    Optional<String> cover,
    Cell origin) {}
