package sparewell.workbook.read;

import java.util.List;

/** A workbook that lacks required sheets or columns; every such fault is listed. */
public final class UnusableWorkbook extends Exception {
  private final transient List<String> faults;

  UnusableWorkbook(List<String> faults) {
    super(String.join("\n", faults));
    this.faults = List.copyOf(faults);
  }

  /** Each fault in an angler's words: which sheet, what is missing, what to do. */
  public List<String> faults() {
    return faults;
  }
}
