package sparewell.rates;

/** The posterior of a style's rate at one draw, as weighted points. */
final class RatePoints {
  // Where the rough way cuts the distribution of a rate, finer towards high rates.
  private static final double[] CUTS = {
    0.05, 0.15, 0.3, 0.45, 0.6, 0.72, 0.82, 0.9, 0.95, 0.98, 0.994, 0.999, 2
  };

  private final double[] rates;
  private final double[] weights;
  private final int count;

  private RatePoints(double[] rates, double[] weights, int count) {
    this.rates = rates;
    this.weights = weights;
    this.count = count;
  }

  /**
   * The points.
   *
   * @param rough whether to draw neighbours together, at their mean: about a dozen points remain,
   *     and a hundredth of the variance of the rate is lost
   */
  static RatePoints of(Draw draw, int style, boolean rough) {
    RatePosterior posterior = draw.posterior();
    double[] weights = posterior.weights(style);
    int nodes = weights.length - 1;
    double[] rates = new double[nodes + 1];
    double[] kept = new double[nodes + 1];
    int count = 0;
    double passed = 0;
    int cut = 0;
    // The tail lies to the left of all points.
    for (int k = 0; k <= nodes; k++) {
      int i = k == 0 ? nodes : k - 1;
      double weight = weights[i];
      if (rough && count > 0 && passed < CUTS[cut]) {
        kept[count - 1] += weight;
        rates[count - 1] += weight * posterior.rate(style, i);
      } else {
        kept[count] = weight;
        rates[count++] = weight * posterior.rate(style, i);
        while (passed >= CUTS[cut]) {
          cut++;
        }
      }
      passed += weight;
    }
    for (int i = 0; i < count; i++) {
      rates[i] = kept[i] > 0 ? rates[i] / kept[i] : 0;
    }
    return new RatePoints(rates, kept, count);
  }

  int count() {
    return count;
  }

  double rate(int i) {
    return rates[i];
  }

  double weight(int i) {
    return weights[i];
  }
}
