package sparewell.units;

/** A mass in whole milligrams, so that totals are exact in any order. */
public record Mass(long milligrams) implements Comparable<Mass> {
  public static final Mass ZERO = new Mass(0);

  public Mass {
    if (milligrams < 0) {
      throw new IllegalArgumentException("negative mass: " + milligrams);
    }
  }

  /** The mass nearest to that many units. */
  public static Mass of(double amount, MassUnit unit) {
    return new Mass(Math.round(amount * unit.milligrams()));
  }

  public double in(MassUnit unit) {
    return milligrams / unit.milligrams();
  }

  public Mass plus(Mass other) {
    return new Mass(Math.addExact(milligrams, other.milligrams));
  }

  /** The product with a count, {@code count >= 0}. */
  public Mass times(long count) {
    return new Mass(Math.multiplyExact(milligrams, count));
  }

  @Override
  public int compareTo(Mass other) {
    return Long.compare(milligrams, other.milligrams);
  }
}
