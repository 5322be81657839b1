package sparewell.season;

import java.util.Comparator;

/**
 * An item: style, size and colour in the spelling first met, so that equal items are equal texts.
 *
 * @param style name of the style, never empty
 * @param size empty where the angler gives none
 * @param colour empty where the angler gives none
 */
public record ItemId(String style, String size, String colour) implements Comparable<ItemId> {
  private static final Comparator<ItemId> ORDER =
      Comparator.comparing(ItemId::style).thenComparing(ItemId::size).thenComparing(ItemId::colour);

  /** Order in which people look for them: sizes by what they measure. */
  public static final Comparator<ItemId> BY_MEASURE =
      Comparator.comparing(ItemId::style)
          .thenComparing(ItemId::size, SizeOrder.SMALL_FIRST)
          .thenComparing(ItemId::colour);

  @Override
  public int compareTo(ItemId other) {
    return ORDER.compare(this, other);
  }

  public String spoken() {
    return (style + " " + size + " " + colour).strip().replaceAll(" +", " ");
  }
}
