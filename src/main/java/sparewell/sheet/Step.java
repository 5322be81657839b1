package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.table.Block;
import sparewell.table.Tone;

/**
 * One thing to do now.
 *
 * @param tone how pressing it is
 * @param details what belongs to it, in order
 * @param remark a sentence after the details; empty where there is none
 */
public record Step(
    String text,
    Tone tone,
    Optional<Cell> link,
    List<Block.Line> details,
    Optional<String> remark) {
  public static final String TITLE = "Do this, in this order";

  private static final String INDENT = "     ";
  private static final int MOST_DETAILS = 3;

  public Step {
    details = List.copyOf(details);
  }

  static Step of(String text, Tone tone, Optional<Cell> link) {
    return new Step(text, tone, link, List.of(), Optional.empty());
  }

  /** The details that a short list shows; one more than the usual number rather than a remark. */
  private List<Block.Line> shown() {
    return details.size() <= MOST_DETAILS + 1 ? details : details.subList(0, MOST_DETAILS);
  }

  /** The steps as lines of the front page, at most one screen. */
  public static List<Block.Line> lines(List<Step> steps, Results results) {
    List<Block.Line> lines = new ArrayList<>();
    lines.add(Block.Line.heading(TITLE));
    if (steps.isEmpty()) {
      lines.add(
          Block.Line.of(
              "Nothing to do: everything you need is aboard, and every box can stay where it is."));
    }
    int number = 0;
    for (Step step : steps) {
      number++;
      String text = number + ". " + step.text() + (step.details().isEmpty() ? "." : ":");
      lines.add(new Block.Line(text, Block.Weight.STRONG, step.tone(), step.link()));
      lines.addAll(step.shown());
      int left = step.details().size() - step.shown().size();
      if (left > 0) {
        lines.add(detail("… and " + left + " more there", Optional.empty()));
      }
      step.remark().map(remark -> detail(remark, Optional.empty())).ifPresent(lines::add);
    }
    SeasonPlanSheet.nextOrder(results, steps.isEmpty()).map(Block.Line::of).ifPresent(lines::add);
    return lines;
  }

  static Block.Line detail(String text, Optional<Cell> link) {
    return new Block.Line(INDENT + text, Block.Weight.PLAIN, Tone.NONE, link);
  }
}
