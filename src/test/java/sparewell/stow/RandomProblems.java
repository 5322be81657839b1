package sparewell.stow;

import java.util.Arrays;
import java.util.Random;

/** Small invented problems with all limits drawn at random: some have no plan at all. */
final class RandomProblems {
  private RandomProblems() {}

  /** Three to seven boxes, two to four places. */
  static StowProblem of(int seed) {
    Random random = new Random(seed);
    int boxes = 3 + random.nextInt(5);
    int places = 2 + random.nextInt(3);
    long[] weight = random.longs(boxes, 200_000, 9_000_000).toArray();
    long[] volume = random.longs(boxes, 1_000_000, 12_000_000).toArray();
    long[] station = random.longs(places, -300_000, 5_000_000).toArray();
    long[] offset = random.longs(places, -800_000, 800_000).toArray();
    double slack = 1.0 + 0.8 * random.nextDouble();
    long[] loadRoom = new long[places];
    long[] volumeRoom = new long[places];
    for (int at = 0; at < places; at++) {
      double share = slack * (0.5 + random.nextDouble()) / places;
      loadRoom[at] =
          random.nextInt(3) == 0
              ? StowProblem.UNLIMITED
              : (long) (share * 1.2 * Arrays.stream(weight).sum());
      volumeRoom[at] = (long) (share * Arrays.stream(volume).sum());
    }
    double[][] cost = new double[boxes][places];
    int[] now = new int[boxes];
    for (int box = 0; box < boxes; box++) {
      for (int at = 0; at < places; at++) {
        cost[box][at] =
            random.nextInt(5) > 0
                ? weight[box] * 1e-6 * station[at] * 1e-6
                : Double.POSITIVE_INFINITY;
      }
      int sure = random.nextInt(places);
      cost[box][sure] = weight[box] * 1e-6 * station[sure] * 1e-6;
      now[box] = random.nextInt(places);
    }
    long side = (long) (Arrays.stream(weight).sum() * 60_000.0 * (0.5 + 2 * random.nextDouble()));
    return new StowProblem(weight, volume, offset, loadRoom, volumeRoom, cost, now, -side, side);
  }

  /** The same problem with other open places. */
  static StowProblem with(StowProblem problem, boolean[][] open) {
    ProblemChange change = new ProblemChange(problem);
    for (int box = 0; box < open.length; box++) {
      for (int at = 0; at < open[box].length; at++) {
        change.cost[box][at] = open[box][at] ? change.cost[box][at] : Double.POSITIVE_INFINITY;
      }
    }
    return change.made();
  }

  /** The open places of a problem, to be changed. */
  static boolean[][] open(StowProblem problem) {
    boolean[][] open = new boolean[problem.boxCount()][problem.placeCount()];
    for (int box = 0; box < open.length; box++) {
      for (int at = 0; at < open[box].length; at++) {
        open[box][at] = problem.allowed(box, at);
      }
    }
    return open;
  }

  /** How many are true. */
  static int count(boolean[] open) {
    int count = 0;
    for (boolean one : open) {
      count += one ? 1 : 0;
    }
    return count;
  }
}
