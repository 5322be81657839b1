package sparewell.stow;

/**
 * By how much a plan breaks limits, in average boxes: what is over in a place by weight or volume,
 * over the side tolerance, over the number of moves. 0 where every limit is kept.
 */
final class Breach {
  /** What a limit costs as soon as it is broken, so that no breach is too small to be mended. */
  private static final double BROKEN = 0.05;

  /** What a move too many costs: less than a box that stands in the wrong place. */
  private static final double MOVE = 0.7;

  private final StowProblem problem;
  private final int mostMoves;
  private final double loadUnit;
  private final double volumeUnit;
  private final double sideUnit;

  Breach(StowProblem problem, int mostMoves) {
    this.problem = problem;
    this.mostMoves = mostMoves;
    double loads = 0;
    double volumes = 0;
    double widest = 0;
    for (int i = 0; i < problem.boxCount; i++) {
      loads += problem.weightMg[i];
      volumes += problem.volumeMm3[i];
    }
    for (long offset : problem.offsetUm) {
      widest = Math.max(widest, Math.abs((double) offset));
    }
    int boxes = Math.max(1, problem.boxCount);
    loadUnit = 1 / Math.max(1, loads / boxes);
    volumeUnit = 1 / Math.max(1, volumes / boxes);
    sideUnit = loadUnit / Math.max(1, widest);
  }

  /** Of one place with so much in it. */
  double ofPlace(int at, long loadMg, long volumeMm3) {
    double sum = 0;
    if (loadMg > problem.loadRoomMg[at]) {
      sum += (loadMg - problem.loadRoomMg[at]) * loadUnit + BROKEN;
    }
    if (volumeMm3 > problem.volumeRoomMm3[at]) {
      sum += (volumeMm3 - problem.volumeRoomMm3[at]) * volumeUnit + BROKEN;
    }
    return sum;
  }

  /**
   * Of the whole plan.
   *
   * @param places sum over all places
   * @param sideMgUm side moment of the boxes, mg um
   * @param moved boxes that stand elsewhere than now
   */
  double ofPlan(double places, long sideMgUm, int moved) {
    double sum = places;
    if (moved > mostMoves) {
      sum += MOVE * (moved - mostMoves);
    }
    if (sideMgUm > problem.sideHighest) {
      sum += (sideMgUm - problem.sideHighest) * sideUnit + BROKEN;
    } else if (sideMgUm < problem.sideLowest) {
      sum += (problem.sideLowest - sideMgUm) * sideUnit + BROKEN;
    }
    return sum;
  }

  /** A running sum over places without what rounding left: a place over costs more than that. */
  static double withoutRounding(double places) {
    return places < BROKEN / 2 ? 0 : places;
  }
}
