package sparewell.workbook.importing;

import java.util.List;

/** Files that cannot be used, or sheets that cannot take rows; every such fault is listed. */
public final class UnusableImport extends Exception {
  private final transient List<String> faults;

  UnusableImport(List<String> faults) {
    super(String.join("\n", faults));
    this.faults = List.copyOf(faults);
  }

  UnusableImport(String fault) {
    this(List.of(fault));
  }

  /** Each fault in an angler's words: what is wrong, what to do. */
  public List<String> faults() {
    return faults;
  }
}
