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

  public synchronized void add(Code code, Cell at, Object... details) {
    all.add(Finding.of(code, at, details));
  }

  public synchronized void addAll(List<Finding> more) {
    all.addAll(more);
  }

  public synchronized List<Finding> list() {
    return List.copyOf(all);
  }
}
