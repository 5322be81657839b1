package sparewell.stow;

import java.util.Arrays;

/** A stowing problem to be made anew with some of its numbers changed; units as there. */
final class ProblemChange {
  long[] weightMg;
  long[] volumeRoomMm3;
  long[] stationUm;
  boolean[][] allowed;
  int[] now;
  private final StowProblem of;

  ProblemChange(StowProblem of) {
    this.of = of;
    weightMg = of.weightMg.clone();
    volumeRoomMm3 = of.volumeRoomMm3.clone();
    stationUm = of.stationUm.clone();
    allowed = Arrays.stream(of.allowed).map(boolean[]::clone).toArray(boolean[][]::new);
    now = of.now.clone();
  }

  /** The problem as it is now. */
  StowProblem made() {
    return new StowProblem(
        weightMg,
        of.volumeMm3,
        stationUm,
        of.offsetUm,
        of.loadRoomMg,
        volumeRoomMm3,
        allowed,
        now,
        of.sideLowest,
        of.sideHighest);
  }
}
