package sparewell.spares;

import java.time.LocalDate;
import java.util.Optional;
import sparewell.units.Mass;

/**
 * A style aboard that was not thrown for the set months.
 *
 * @param lastThrown last trip with hours or a loss of it, where there is one
 * @param knownWeight mass of its pieces aboard, as far as known
 * @param unweighedPieces pieces aboard whose mass is not known
 * @param momentKgM sum of mass x station of the known mass, forward of the transom positive
 * @param sideMomentKgM sum of mass x side offset of the known mass, starboard positive
 */
public record IdleStyle(
    String style,
    int pieces,
    Optional<LocalDate> lastThrown,
    Mass knownWeight,
    int unweighedPieces,
    double momentKgM,
    double sideMomentKgM) {}
