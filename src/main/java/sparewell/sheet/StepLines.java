package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import sparewell.table.Block;
import sparewell.table.Tone;

/** The steps as lines of the front page, at most one screen. */
public final class StepLines {
  public static final String TITLE = "Do this, in this order";

  private static final String INDENT = "     ";

  private StepLines() {}

  public static List<Block.Line> of(List<Step> steps, Results results) {
    List<Block.Line> lines = new ArrayList<>();
    lines.add(Block.Line.heading(TITLE));
    if (steps.isEmpty()) {
      lines.add(
          Block.Line.of(
              "Nothing to do: everything you need is aboard, and every box can stay where it is."));
      SeasonPlanSheet.nextOrder(results).map(Block.Line::of).ifPresent(lines::add);
    }
    int number = 0;
    for (Step step : steps) {
      number++;
      String text = number + ". " + step.text() + (step.details().isEmpty() ? "." : ":");
      lines.add(new Block.Line(text, Block.Weight.STRONG, step.tone(), step.link()));
      for (Step.Detail detail : step.shown()) {
        lines.add(
            new Block.Line(INDENT + detail.text(), Block.Weight.PLAIN, Tone.NONE, detail.link()));
      }
      if (step.left() > 0) {
        lines.add(Block.Line.of(INDENT + "… and " + step.left() + " more there"));
      }
      step.remark().ifPresent(remark -> lines.add(Block.Line.of(INDENT + remark)));
    }
    return lines;
  }
}
