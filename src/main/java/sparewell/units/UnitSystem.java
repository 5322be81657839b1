package sparewell.units;

/** The units that apply where a column names none. */
public enum UnitSystem {
  /** Items in ounces, boxes and loads in pounds, lengths in inches. */
  US,
  /** Items in grams, boxes and loads in kilograms, lengths in centimetres. */
  METRIC
}
