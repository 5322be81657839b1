package sparewell.stow;

import java.util.Arrays;

/** A stowing problem to be made anew with some of its numbers changed; units as there. */
final class ProblemChange {
  long[] volumeRoomMm3;
  double[][] cost;
  int[] now;
  private final StowProblem of;

  ProblemChange(StowProblem of) {
    this.of = of;
    volumeRoomMm3 = of.volumeRoomMm3().clone();
    cost = Arrays.stream(of.cost()).map(double[]::clone).toArray(double[][]::new);
    now = of.now().clone();
  }

  /** The problem as it is now. */
  StowProblem made() {
    return new StowProblem(
        of.weightMg(),
        of.volumeMm3(),
        of.offsetUm(),
        of.loadRoomMg(),
        volumeRoomMm3,
        cost,
        now,
        of.sideLowest(),
        of.sideHighest());
  }
}
