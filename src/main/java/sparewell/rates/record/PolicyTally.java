package sparewell.rates.record;

import java.util.OptionalDouble;
import sparewell.numerics.CountDistribution;
import sparewell.rates.history.StyleUse;

/** Running sums of how one policy did. */
final class PolicyTally {
  private static final double INTERVAL = 0.9;

  private int predictions;
  private int runOuts;
  private long carried;
  private int judged;
  private double inside;

  /**
   * Adds a prediction of a policy that foresees no distribution.
   *
   * @param stock pieces that would have been carried
   */
  void add(int stock, StyleUse use) {
    predictions++;
    carried += stock;
    if (use.lostPieces() > stock) {
      runOuts++;
    }
  }

  /**
   * Adds a prediction.
   *
   * @param losses as foreseen
   * @param chance wanted chance that the pieces carried last, in (0, 1)
   * @param use what happened
   */
  void add(CountDistribution losses, double chance, StyleUse use) {
    add(losses.quantile(chance), use);
    if (!use.ranOut()) {
      judged++;
      inside += inside(losses, use.lostPieces());
    }
  }

  /**
   * Which part of a count lies in the central interval: the count n stands for the stretch of
   * probability from P(N &lt; n) to P(N &le; n), so that the parts of all counts, weighted by their
   * chances, sum to the interval's.
   */
  private static double inside(CountDistribution losses, int count) {
    double below = losses.atMost(count - 1);
    double upTo = losses.atMost(count);
    double low = (1 - INTERVAL) / 2;
    double overlap = Math.min(upTo, 1 - low) - Math.max(below, low);
    return overlap > 0 ? overlap / (upTo - below) : 0;
  }

  TrackRecord.Line line(String policy) {
    return new TrackRecord.Line(
        policy,
        predictions,
        runOuts,
        ratio(100.0 * runOuts, predictions),
        ratio(carried, predictions),
        judged > 0 ? OptionalDouble.of(INTERVAL) : OptionalDouble.empty(),
        ratio(inside, judged));
  }

  private static OptionalDouble ratio(double sum, int count) {
    return count > 0 ? OptionalDouble.of(sum / count) : OptionalDouble.empty();
  }
}
