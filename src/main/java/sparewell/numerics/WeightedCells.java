package sparewell.numerics;

import java.util.Arrays;

/**
 * A distribution made of weighted cells, each spread over its width with a density that is even or
 * changes linearly; gives quantiles.
 */
public final class WeightedCells {
  private double[] centre = new double[256];
  private double[] width = new double[256];
  private double[] weight = new double[256];
  private double[] tilt = new double[256];
  private int count;
  private double total;

  /**
   * Adds an even cell.
   *
   * @param at its centre
   * @param wide its width, &gt; 0
   * @param chance its weight, &ge; 0
   */
  public void add(double at, double wide, double chance) {
    add(at, wide, chance, 0);
  }

  /**
   * Adds a cell.
   *
   * @param at its centre
   * @param wide its width, &gt; 0
   * @param chance its weight, &ge; 0
   * @param rise by how much density times width is higher at its right end than at its left
   */
  public void add(double at, double wide, double chance, double rise) {
    if (count == centre.length) {
      centre = Arrays.copyOf(centre, 2 * count);
      width = Arrays.copyOf(width, 2 * count);
      weight = Arrays.copyOf(weight, 2 * count);
      tilt = Arrays.copyOf(tilt, 2 * count);
    }
    centre[count] = at;
    width[count] = wide;
    weight[count] = chance;
    tilt[count] = rise / 2;
    total += chance;
    count++;
  }

  /**
   * The point below which the asked share of the weight lies.
   *
   * @param probability in (0, 1)
   */
  public double quantile(double probability) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      low = Math.min(low, centre[i] - width[i] / 2);
      high = Math.max(high, centre[i] + width[i] / 2);
    }
    double wanted = probability * total;
    double atLow = -wanted;
    double atHigh = total - wanted;
    // Only cells that reach between the ends are looked at again; their places are swapped forward.
    int open = count;
    double passed = 0;
    for (int step = 0; step < 60 && high - low > 1e-9; step++) {
      // A chord, but never closer to an end than a twentieth, so that both ends move.
      double part = atLow / (atLow - atHigh);
      double x = low + (high - low) * Math.max(0.05, Math.min(0.95, part));
      double over = passed + below(x, open) - wanted;
      if (Math.abs(over) < 1e-9 * total) {
        return x;
      }
      if (over < 0) {
        low = x;
        atLow = over;
      } else {
        high = x;
        atHigh = over;
      }
      int kept = 0;
      for (int i = 0; i < open; i++) {
        if (centre[i] + width[i] / 2 <= low) {
          passed += weight[i];
        } else if (centre[i] - width[i] / 2 < high) {
          swap(kept++, i);
        }
      }
      open = kept;
    }
    return (low + high) / 2;
  }

  private void swap(int i, int j) {
    swap(centre, i, j);
    swap(width, i, j);
    swap(weight, i, j);
    swap(tilt, i, j);
  }

  private static void swap(double[] values, int i, int j) {
    double value = values[i];
    values[i] = values[j];
    values[j] = value;
  }

  private double below(double x, int open) {
    double sum = 0;
    for (int i = 0; i < open; i++) {
      double part = Math.max(0, Math.min(1, (x - centre[i]) / width[i] + 0.5));
      sum += part * (weight[i] - tilt[i] * (1 - part));
    }
    return sum;
  }
}
