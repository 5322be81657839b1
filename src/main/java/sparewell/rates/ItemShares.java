package sparewell.rates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sparewell.numerics.NegativeBinomial;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.StockRow;

/**
 * Shares of the items in the losses of a style: Dirichlet with parameter &alpha;/n + past losses of
 * the item, n items.
 *
 * @param weights Dirichlet parameter of each item, by style
 * @param alpha &alpha;, the pieces that the belief in equal shares is worth
 */
record ItemShares(Map<String, Map<ItemId, Double>> weights, double alpha) {
  // Weak prior of ln alpha, our own choice: around 4 pieces, mostly 0.8 to 20.
  private static final double LOG_CENTRE = Math.log(4);
  private static final double LOG_SPREAD = 1;

  /** Fits &alpha; by the Dirichlet-multinomial likelihood of all styles under a weak prior. */
  static ItemShares of(Season season) {
    Map<String, Set<ItemId>> items = new LinkedHashMap<>();
    for (StockRow row : season.stock()) {
      items.computeIfAbsent(row.item().style(), s -> new LinkedHashSet<>()).add(row.item());
    }
    Map<ItemId, Integer> lost = new LinkedHashMap<>();
    List<Loss> vague = new ArrayList<>();
    for (Loss loss : season.losses()) {
      Set<ItemId> known = items.getOrDefault(loss.item().style(), Set.of());
      if (known.contains(loss.item())) {
        lost.merge(loss.item(), loss.lostPieces(), Integer::sum);
      } else if (!known.isEmpty() && loss.lostPieces() > 0) {
        vague.add(loss);
      }
    }
    List<int[]> counts = new ArrayList<>();
    for (Set<ItemId> of : items.values()) {
      counts.add(of.stream().mapToInt(item -> lost.getOrDefault(item, 0)).toArray());
    }
    double alpha = alpha(counts);
    Map<String, Map<ItemId, Double>> weights = new LinkedHashMap<>();
    items.forEach(
        (style, of) -> {
          Map<ItemId, Double> each = new LinkedHashMap<>();
          of.forEach(item -> each.put(item, alpha / of.size() + lost.getOrDefault(item, 0)));
          weights.put(style, each);
        });
    for (Loss loss : vague) {
      share(weights.get(loss.item().style()), loss);
    }
    return new ItemShares(weights, alpha);
  }

  /**
   * Shares a loss of known size or colour among the items it may have been, as they share so far.
   */
  private static void share(Map<ItemId, Double> weights, Loss loss) {
    List<ItemId> fit =
        weights.keySet().stream()
            .filter(item -> agrees(loss.item().size(), item.size()))
            .filter(item -> agrees(loss.item().colour(), item.colour()))
            .toList();
    if (fit.isEmpty() || fit.size() == weights.size()) {
      return; // nothing is known of the item, so the shares stay as they are
    }
    double sum = fit.stream().mapToDouble(weights::get).sum();
    for (ItemId item : fit) {
      weights.merge(item, loss.lostPieces() * weights.get(item) / sum, Double::sum);
    }
  }

  private static boolean agrees(String logged, String stocked) {
    return logged.isEmpty() || logged.equals(stocked);
  }

  /**
   * Posterior mean of ln &alpha;, as &alpha;.
   *
   * @param counts losses of each item, one array for each style
   */
  static double alpha(List<int[]> counts) {
    double sum = 0;
    double mean = 0;
    double best = Double.NEGATIVE_INFINITY;
    double[] logs = new double[121];
    for (int pass = 0; pass < 2; pass++) {
      for (int i = 0; i < logs.length; i++) {
        double z = (i - 60) / 15.0;
        double alpha = Math.exp(LOG_CENTRE + LOG_SPREAD * z);
        if (pass == 0) {
          logs[i] = logLikelihood(counts, alpha) - z * z / 2;
          best = Math.max(best, logs[i]);
        } else {
          double weight = Math.exp(logs[i] - best);
          sum += weight;
          mean += weight * Math.log(alpha);
        }
      }
    }
    return Math.exp(mean / sum);
  }

  /** ln of the Dirichlet-multinomial likelihood, without what does not depend on &alpha;. */
  static double logLikelihood(List<int[]> counts, double alpha) {
    double sum = 0;
    for (int[] style : counts) {
      int total = 0;
      for (int count : style) {
        total += count;
        if (count > 0) {
          sum += logRising(alpha / style.length, count);
        }
      }
      sum -= logRising(alpha, total);
    }
    return sum;
  }

  private static double logRising(double x, int n) {
    return NegativeBinomial.logCoefficient(n, x) + n * Math.log(x);
  }

  /** Dirichlet parameter of an item; of one that no stock row names, that of an item never lost. */
  double weight(ItemId item) {
    Map<ItemId, Double> of = weights.getOrDefault(item.style(), Map.of());
    return of.getOrDefault(item, alpha / Math.max(1, of.size()));
  }
}
