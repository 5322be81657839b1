package sparewell.sheet;

import java.util.List;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.table.Tone;

/**
 * One thing to do now.
 *
 * @param tone how pressing it is
 * @param details what belongs to it, in order
 * @param remark a sentence after the details; empty where there is none
 */
public record Step(
    String text, Tone tone, Optional<Cell> link, List<Detail> details, Optional<String> remark) {
  private static final int MOST_DETAILS = 3;

  public Step {
    details = List.copyOf(details);
  }

  /**
   * A part of a step.
   *
   * @param text what it says
   * @param link its row
   */
  public record Detail(String text, Optional<Cell> link) {}

  static Step of(String text, Tone tone, Optional<Cell> link) {
    return new Step(text, tone, link, List.of(), Optional.empty());
  }

  /** The details that a short list shows; one more than the usual number rather than a remark. */
  public List<Detail> shown() {
    return details.size() <= MOST_DETAILS + 1 ? details : details.subList(0, MOST_DETAILS);
  }

  public int left() {
    return details.size() - shown().size();
  }
}
