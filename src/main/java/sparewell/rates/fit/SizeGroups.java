package sparewell.rates.fit;

import java.util.List;

/**
 * Draws of like size of the negative binomial.
 *
 * @param group number of each draw's group
 * @param weight weight of each group; 0 where it is empty
 * @param size size for one day of each group, the harmonic mean of its draws: variances stay right
 */
record SizeGroups(int[] group, double[] weight, double[] size) {
  private static final double WIDTH = 0.4; // of a group, in ln of the size
  private static final double WIDE = 1.2; // the same of few draws

  static SizeGroups of(List<HyperPosterior.Draw> draws) {
    double width = draws.size() < RateFit.FEW_DRAWS ? WIDE : WIDTH;
    double[] log = draws.stream().mapToDouble(d -> Math.log(d.given().hyper().size())).toArray();
    double least = Double.POSITIVE_INFINITY;
    double largest = Double.NEGATIVE_INFINITY;
    for (double one : log) {
      least = Math.min(least, one);
      largest = Math.max(largest, one);
    }
    int[] group = new int[log.length];
    double[] weight = new double[1 + (int) ((largest - least) / width)];
    double[] size = new double[weight.length];
    for (int d = 0; d < group.length; d++) {
      group[d] = (int) ((log[d] - least) / width);
      weight[group[d]] += draws.get(d).weight();
      size[group[d]] += draws.get(d).weight() * Math.exp(-log[d]);
    }
    for (int g = 0; g < size.length; g++) {
      size[g] = weight[g] > 0 ? weight[g] / size[g] : 1;
    }
    return new SizeGroups(group, weight, size);
  }

  int count() {
    return weight.length;
  }
}
