package sparewell.workbook.read;

import java.util.List;

/** Sheets or files that lack what must be there; every such fault is listed. */
public final class UnusableInput extends Exception {
  private final transient List<String> faults;

  public UnusableInput(List<String> faults) {
    super(String.join("\n", faults));
    this.faults = List.copyOf(faults);
  }

  public UnusableInput(String fault) {
    this(List.of(fault));
  }

  /** Each fault in an angler's words: what is wrong, what to do. */
  public List<String> faults() {
    return faults;
  }
}
