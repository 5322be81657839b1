package sparewell.finding;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Collects findings; the same finding at the same place is kept once. Several sheets may be read at
 * once: the order in which findings come from different sheets means nothing.
 */
public final class Findings {
  private final Set<Finding> all = new LinkedHashSet<>();

  /** Adds one. */
  public synchronized void add(Code code, Cell at, Object... details) {
    all.add(Finding.of(code, at, details));
  }

  /** Adds those of an analysis. */
  public synchronized void addAll(List<Finding> more) {
    all.addAll(more);
  }

  /** All so far, in the order they came. */
  public synchronized List<Finding> list() {
    return List.copyOf(new ArrayList<>(all));
  }
}
