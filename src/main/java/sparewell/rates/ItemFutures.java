package sparewell.rates;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import sparewell.rates.fit.RateFutures;
import sparewell.season.ItemId;

/** Shares of items in the losses of their style in each of many futures: Dirichlet. */
final class ItemFutures {
  private final RateFutures futures;
  private final ToDoubleFunction<ItemId> weight;
  private final Map<ItemId, double[]> logs = new ConcurrentHashMap<>(); // up to a common summand
  private final Map<List<ItemId>, double[]> logSums = new ConcurrentHashMap<>();

  /**
   * Draws nothing yet.
   *
   * @param weight Dirichlet parameter of an item
   */
  ItemFutures(RateFutures futures, ToDoubleFunction<ItemId> weight) {
    this.futures = futures;
    this.weight = weight;
  }

  int count() {
    return futures.count();
  }

  /** Shares of an item among those used together, by future. */
  double[] shares(ItemId item, List<ItemId> among) {
    double[] sum = logSums.computeIfAbsent(among, this::logSum);
    double[] log = log(item);
    double[] share = new double[sum.length];
    for (int k = 0; k < share.length; k++) {
      share[k] = Math.exp(log[k] - sum[k]);
    }
    return share;
  }

  private double[] log(ItemId item) {
    return logs.computeIfAbsent(item, this::drawn);
  }

  private double[] drawn(ItemId item) {
    double shape = weight.applyAsDouble(item);
    return futures.logGamma(k -> shape, item.toString().hashCode());
  }

  private double[] logSum(List<ItemId> among) {
    double[][] each = among.stream().map(this::log).toArray(double[][]::new);
    double[] sum = new double[futures.count()];
    for (int k = 0; k < sum.length; k++) {
      double top = Double.NEGATIVE_INFINITY;
      for (double[] log : each) {
        top = Math.max(top, log[k]);
      }
      double parts = 0;
      for (double[] log : each) {
        parts += Math.exp(log[k] - top);
      }
      sum[k] = top + Math.log(parts);
    }
    return sum;
  }

  /** How many numbers are held. */
  long held() {
    return (long) (logs.size() + logSums.size()) * futures.count();
  }
}
