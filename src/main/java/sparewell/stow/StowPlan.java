package sparewell.stow;

import java.util.List;
import java.util.Optional;
import sparewell.finding.Finding;

/**
 * Where the boxes should go.
 *
 * @param loads weights of the boxes and of loose stock aboard
 * @param boxes every box aboard: those that move in the order of their steps, then the others by
 *     name
 * @param curve the best that 0, 1, 2 ... moved boxes can reach, 15 at most; empty where withheld
 * @param steps the moves of the recommended plan, in an order that can be carried out
 * @param outcome what came of it
 * @param refusal why nothing is planned, where that is so
 * @param now the tackle as it stands
 * @param recommended the tackle after the recommended moves; as it stands where there are none
 * @param best the tackle in the best plan found; absent where there is no plan
 * @param bestMoves boxes that the best plan moves
 * @param bestGapPercent proven gap of the best plan, as in {@link CurveRow}
 * @param reach what reaching boxes costs; absent where no hours are known or no place is at hand
 * @param sideToleranceKgM most side moment of the tackle either way, kg m
 * @param findings limits broken, conflicts, what was not checked
 */
public record StowPlan(
    AboardLoads loads,
    List<BoxPlan> boxes,
    List<CurveRow> curve,
    List<MoveStep> steps,
    Outcome outcome,
    Optional<Refusal> refusal,
    Moment now,
    Moment recommended,
    Optional<Moment> best,
    int bestMoves,
    double bestGapPercent,
    Optional<ReachChange> reach,
    double sideToleranceKgM,
    List<Finding> findings) {
  public StowPlan {
    boxes = List.copyOf(boxes);
    curve = List.copyOf(curve);
    steps = List.copyOf(steps);
    findings = List.copyOf(findings);
  }

  /** Outcome of the search. */
  public enum Outcome {
    /** No box aboard, or none that may be moved. */
    NOTHING_TO_MOVE,
    /** No move is worth its trouble. */
    STAYS,
    /** Moves are recommended. */
    MOVE,
    /** Nothing is planned, see the refusal. */
    REFUSED
  }

  /** Minutes a day spent reaching for boxes that do not stand at hand, now and as recommended. */
  public record ReachChange(double nowMinutes, double plannedMinutes) {}

  /** Boxes moved by the recommended plan. */
  public int recommendedMoves() {
    return (int) boxes.stream().filter(BoxPlan::moves).count();
  }
}
