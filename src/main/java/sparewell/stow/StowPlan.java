package sparewell.stow;

import java.util.List;
import java.util.Optional;
import sparewell.finding.Finding;

/**
 * Where the boxes should go.
 *
 * @param loads weights of the boxes and of loose stock aboard
 * @param boxes every box aboard, in the order of the workbook
 * @param curve the best that 0, 1, 2 ... moved boxes can reach, 15 at most
 * @param steps the moves of the recommended plan, in an order that can be carried out
 * @param outcome what came of it
 * @param now the tackle as it stands
 * @param recommended the tackle after the recommended moves; as it stands where there are none
 * @param best the tackle in the best plan found; absent where there is no plan
 * @param bestMoves boxes that the best plan moves
 * @param bestGapPercent proven gap of the best plan, as in {@link CurveRow}
 * @param sideToleranceKgM most side moment of the tackle either way, kg m
 * @param findings limits broken, conflicts, what was not checked
 */
public record StowPlan(
    AboardLoads loads,
    List<BoxPlan> boxes,
    List<CurveRow> curve,
    List<MoveStep> steps,
    Outcome outcome,
    Moment now,
    Moment recommended,
    Optional<Moment> best,
    int bestMoves,
    double bestGapPercent,
    double sideToleranceKgM,
    List<Finding> findings) {
  public StowPlan {
    boxes = List.copyOf(boxes);
    curve = List.copyOf(curve);
    steps = List.copyOf(steps);
    findings = List.copyOf(findings);
  }

  /** What came of the search. */
  public enum Outcome {
    /** No box aboard, or none that may be moved. */
    NOTHING_TO_MOVE,
    /** The present stow is the best that was found. */
    STAYS,
    /** Moves are recommended. */
    MOVE,
    /** The present stow breaks limits and so does every plan that was tried. */
    NO_PLAN
  }

  /** Boxes moved by the recommended plan. */
  public int recommendedMoves() {
    return (int) boxes.stream().filter(BoxPlan::moves).count();
  }
}
