package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Draws of like size of the negative binomial, in groups of about equal weight. */
final class SizeGroups {
  private static final int MOST = 12;
  private static final int FEWEST_DRAWS = 8; // in a group

  private final int[] group;
  private final double[] weight;
  private final double[] size;

  SizeGroups(List<HyperPosterior.Draw> draws) {
    group = new int[draws.size()];
    int groups = Math.max(1, Math.min(MOST, draws.size() / FEWEST_DRAWS));
    weight = new double[groups];
    size = new double[groups];
    List<Integer> order = new ArrayList<>();
    for (int d = 0; d < group.length; d++) {
      order.add(d);
    }
    order.sort(Comparator.comparingDouble(d -> draws.get(d).given().hyper().size));
    double passed = 0;
    for (int d : order) {
      double chance = draws.get(d).weight();
      int g = (int) Math.max(0, Math.min(groups - 1, groups * (passed + chance / 2)));
      passed += chance;
      group[d] = g;
      weight[g] += chance;
      size[g] += chance * Math.log(draws.get(d).given().hyper().size);
    }
    for (int g = 0; g < groups; g++) {
      size[g] = weight[g] > 0 ? Math.exp(size[g] / weight[g]) : 1;
    }
  }

  /** Number of groups; one may be empty. */
  int count() {
    return weight.length;
  }

  /** Group of a draw. */
  int of(int draw) {
    return group[draw];
  }

  /** Weight of a group. */
  double weight(int g) {
    return weight[g];
  }

  /** Size for one day, the geometric mean of its draws. */
  double size(int g) {
    return size[g];
  }
}
