package sparewell.season;

import java.util.Locale;
import sparewell.finding.Cell;
import sparewell.units.Length;
import sparewell.units.Mass;

/** A load that is not tackle; forward of the transom and starboard are positive. */
public record FixedLoad(
    String name, Mass weight, Length fromTransom, Length fromCentreline, Kind kind, Cell origin) {
  /** Kinds of load, which the lines of a capacity plate count differently. */
  public enum Kind {
    HULL,
    MOTOR,
    PERSON,
    FUEL,
    BATTERY,
    GEAR;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
