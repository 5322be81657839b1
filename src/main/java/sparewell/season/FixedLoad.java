package sparewell.season;

import java.util.Locale;
import sparewell.finding.Cell;
import sparewell.units.Length;
import sparewell.units.Mass;

/** A load of the boat that is not tackle; station forward and side offset starboard positive. */
public record FixedLoad(
    String name, Mass weight, Length fromTransom, Length fromCentreline, Kind kind, Cell origin) {
  /** What the load is, since the lines of a capacity plate count kinds differently. */
  public enum Kind {
    HULL,
    MOTOR,
    PERSON,
    FUEL,
    BATTERY,
    GEAR;

    /** The word used in the workbook. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
