package sparewell.workbook.read;

import java.util.Optional;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.NearMiss;

/**
 * Names that no sheet defines, such as families and covers. One that differs from an earlier one by
 * a letter or two gets a finding at its first row, since it may be a slip.
 */
final class Lookalikes {
  private static final int SHORTEST = 5;

  /** Least letters of a name in which two differing letters are a slip. */
  private static final int LONG = 8;

  private final String done;
  private final Keys met = new Keys("");

  /** {@code done} says what becomes of such a name. */
  Lookalikes(String done) {
    this.done = done;
  }

  void meet(Row row, String column, String name) {
    if (name.isEmpty() || met.find(name).isPresent()) {
      return;
    }
    Optional<String> near =
        name.length() < SHORTEST
            ? Optional.empty()
            : met.near(name).filter(other -> likely(name, other));
    near.ifPresent(other -> row.sayDidYouMean(column, name, done, other));
    met.add(name, row.origin());
  }

  private static boolean likely(String name, String other) {
    return name.length() >= LONG || NearMiss.lettersOff(Names.fold(name), Names.fold(other)) == 1;
  }
}
