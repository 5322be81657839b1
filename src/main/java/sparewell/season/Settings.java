package sparewell.season;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Cell;
import sparewell.units.Length;
import sparewell.units.UnitSystem;

/**
 * Settings in force: those of the workbook, overridden by the command line.
 *
 * @param stockCountedOn date of the count of Stock rows without one, where set
 * @param chanceWantedProbability wanted chance that an item does not run out
 * @param chanceFromCommandLine whether that chance came from the command line and so beats those of
 *     styles and events
 * @param planningHours hours until stock can be refilled, &gt; 0
 * @param planningDays days those hours are spread over, &gt; 0
 * @param leadTimeDays days from an order until it is aboard, &ge; 0
 * @param fillFactorShare usable share of a compartment's volume, in (0, 1]
 * @param reachWorth how far forward the tackle's centre may lie to save one minute a day of
 *     reaching for boxes that are not at hand
 * @param idleAfterMonths months without a throw after which a style is idle
 * @param halfLifeMonths months after which a trip counts half, where set
 */
public record Settings(
    UnitSystem units,
    LocalDate asOf,
    int carryAtLeast,
    Optional<LocalDate> stockCountedOn,
    double chanceWantedProbability,
    boolean chanceFromCommandLine,
    double planningHours,
    double planningDays,
    double leadTimeDays,
    Optional<BigDecimal> budget,
    String currency,
    double fillFactorShare,
    Optional<SideTolerance> sideTolerance,
    Length reachWorth,
    double idleAfterMonths,
    OptionalDouble halfLifeMonths,
    LabelPage labels) {
  /**
   * A side tolerance that the angler set.
   *
   * @param kgM most side moment either way, kg m
   */
  public record SideTolerance(double kgM, Cell origin) {}

  /** Size of one label and how many stand on a page. */
  public record LabelPage(Length width, Length height, int across, int down) {}
}
