package sparewell.units;

/** Units that apply where a column names none. */
public enum UnitSystem {
  US(MassUnit.OUNCE, MassUnit.POUND, LengthUnit.INCH),
  METRIC(MassUnit.GRAM, MassUnit.KILOGRAM, LengthUnit.CENTIMETRE);

  private final MassUnit itemMass;
  private final MassUnit loadMass;
  private final LengthUnit length;

  UnitSystem(MassUnit itemMass, MassUnit loadMass, LengthUnit length) {
    this.itemMass = itemMass;
    this.loadMass = loadMass;
    this.length = length;
  }

  public MassUnit itemMass() {
    return itemMass;
  }

  public MassUnit loadMass() {
    return loadMass;
  }

  public LengthUnit length() {
    return length;
  }
}
