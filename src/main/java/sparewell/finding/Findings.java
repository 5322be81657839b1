package sparewell.finding;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Collects findings, each once. Safe for threads that read several sheets at a time; the order of
 * findings from different sheets is then arbitrary.
 */
public final class Findings {
  private final Set<Finding> all = new LinkedHashSet<>();

  /** Adds a finding. */
  public synchronized void add(Code code, Cell at, Object... details) {
    all.add(Finding.of(code, at, details));
  }

  /** Adds those of an analysis. */
  public synchronized void addAll(List<Finding> more) {
    all.addAll(more);
  }

  /** All so far, in the order they came. */
  public synchronized List<Finding> list() {
    return List.copyOf(all);
  }
}
