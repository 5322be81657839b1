package sparewell.season;

import java.util.Comparator;

/**
 * A place of stock: a box, or loose in a compartment.
 *
 * @param compartment name of the compartment that holds the box or the loose stock
 */
public record Place(String box, String compartment) {
  public static final Comparator<Place> BY_NAME =
      Comparator.comparing(Place::name).thenComparing(Place::compartment);

  /** True for stock loose in its compartment. */
  public boolean loose() {
    return box.isEmpty();
  }

  /** Name of the box, or of the compartment for loose stock. */
  public String name() {
    return loose() ? compartment : box;
  }
}
