package sparewell.experience;

import java.util.Comparator;

/** Quantity that several logs can share, by its name in the form in which names are compared. */
public record Key(Kind kind, Unit unit, String name) implements Comparable<Key> {
  private static final Comparator<Key> ORDER =
      Comparator.comparing(Key::kind).thenComparing(Key::unit).thenComparing(Key::name);

  @Override
  public int compareTo(Key other) {
    return ORDER.compare(this, other);
  }
}
