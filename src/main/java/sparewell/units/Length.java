package sparewell.units;

/** A length or signed position in whole micrometres. */
public record Length(long micrometres) implements Comparable<Length> {
  public static final Length ZERO = new Length(0);

  /** The length nearest to that many units. */
  public static Length of(double amount, LengthUnit unit) {
    return new Length(Math.round(amount * unit.micrometres()));
  }

  public double in(LengthUnit unit) {
    return micrometres / unit.micrometres();
  }

  @Override
  public int compareTo(Length other) {
    return Long.compare(micrometres, other.micrometres);
  }
}
