package sparewell.stow;

import java.util.Arrays;

/**
 * The quick lower bound: all limits are priced and each box then takes its cheapest place. At the
 * best prices it equals the bound of linear programming; the prices of the boxes that follow are a
 * good start for {@link DualBound}. Values are in kg m.
 */
final class LinearBound {
  private final StowProblem problem;
  private final double[] perLoad;
  private final double[] volume;
  private final double[] load;
  private final double[] volumeRoom;
  private final double[] loadRoom;
  private final double sideLow;
  private final double sideHigh;

  /** Prices of volume by place, of load by place, of side moment. */
  private final double[] price;

  private final double[] slope;
  private final double[] direction;
  private final double[] bestPrice;
  private final double[] scale;

  LinearBound(StowProblem problem) {
    int n = problem.boxCount;
    int m = problem.placeCount;
    this.problem = problem;
    perLoad = new double[m];
    volume = new double[n];
    load = new double[n];
    volumeRoom = new double[m];
    loadRoom = new double[m];
    price = new double[2 * m + 1];
    slope = new double[2 * m + 1];
    direction = new double[2 * m + 1];
    bestPrice = new double[2 * m + 1];
    scale = new double[2 * m + 1];
    sideLow = problem.sideLowest * 1e-12;
    sideHigh = problem.sideHighest * 1e-12;
    double volumes = 0;
    double loads = 0;
    double sides = 0;
    for (int i = 0; i < n; i++) {
      volume[i] = problem.volumeMm3[i] * 1e-6;
      load[i] = problem.weightMg[i] * 1e-6;
      volumes += volume[i];
      loads += load[i];
      for (int j = 0; j < m; j++) {
        sides += Math.abs(load[i] * (problem.offsetUm[j] * 1e-6));
      }
    }
    Arrays.fill(scale, 0, m, Math.max(1e-9, volumes / Math.max(1, n)));
    Arrays.fill(scale, m, 2 * m, Math.max(1e-9, loads / Math.max(1, n)));
    scale[2 * m] = Math.max(1e-9, sides / Math.max(1, n * m));
    for (int j = 0; j < m; j++) {
      volumeRoom[j] = problem.volumeRoomMm3[j] * 1e-6;
      loadRoom[j] = problem.loadRoomMg[j] * 1e-6;
    }
  }

  /** What a kilogram costs in a place: its arm, the room it takes, its pull to one side. */
  private void perLoad() {
    int m = problem.placeCount;
    for (int j = 0; j < m; j++) {
      perLoad[j] =
          problem.stationUm[j] * 1e-6 + price[m + j] + price[2 * m] * (problem.offsetUm[j] * 1e-6);
    }
  }

  private double priced(int i, int j) {
    return load[i] * perLoad[j] + volume[i] * price[j];
  }

  private double evaluate(boolean[][] allowed) {
    int m = problem.placeCount;
    double total = -(price[2 * m] >= 0 ? price[2 * m] * sideHigh : price[2 * m] * sideLow);
    double sideNow = 0;
    perLoad();
    for (int j = 0; j < m; j++) {
      boolean volumeLimit = problem.volumeRoomMm3[j] < StowProblem.UNLIMITED / 2;
      boolean loadLimit = problem.loadRoomMg[j] < StowProblem.UNLIMITED / 2;
      total -= volumeLimit ? price[j] * volumeRoom[j] : 0;
      total -= loadLimit ? price[m + j] * loadRoom[j] : 0;
      slope[j] = volumeLimit ? -volumeRoom[j] : Double.NEGATIVE_INFINITY;
      slope[m + j] = loadLimit ? -loadRoom[j] : Double.NEGATIVE_INFINITY;
    }
    for (int i = 0; i < problem.boxCount; i++) {
      int cheapest = -1;
      double least = Double.POSITIVE_INFINITY;
      for (int j = 0; j < m; j++) {
        if (allowed[i][j]) {
          double here = priced(i, j);
          if (here < least) {
            least = here;
            cheapest = j;
          }
        }
      }
      if (cheapest < 0) {
        return Double.POSITIVE_INFINITY;
      }
      total += least;
      slope[cheapest] += volume[i];
      slope[m + cheapest] += load[i];
      sideNow += load[i] * (problem.offsetUm[cheapest] * 1e-6);
    }
    double sideSlack = price[2 * m] >= 0 ? sideNow - sideHigh : sideNow - sideLow;
    if (price[2 * m] == 0 && sideNow < sideHigh) {
      sideSlack = Math.min(0, sideNow - sideLow);
    }
    slope[2 * m] = sideSlack;
    return total;
  }

  /** Raises the bound by at most that many steps towards {@code target}; gives the best found. */
  double ascend(boolean[][] allowed, double target, int steps) {
    int m = problem.placeCount;
    double best = -Double.MAX_VALUE;
    double theta = 1.0;
    int sinceBetter = 0;
    int shrunk = 0;
    Arrays.fill(direction, 0);
    for (int at = 0; at < steps; at++) {
      double bound = evaluate(allowed);
      if (bound == Double.POSITIVE_INFINITY) {
        return bound;
      }
      if (bound > best) {
        best = bound;
        System.arraycopy(price, 0, bestPrice, 0, price.length);
        sinceBetter = 0;
        if (best >= target) {
          break;
        }
      } else if (++sinceBetter >= 15) {
        theta *= 0.87;
        sinceBetter = 0;
        if (++shrunk % 4 == 0) {
          System.arraycopy(bestPrice, 0, price, 0, price.length);
          Arrays.fill(direction, 0);
        }
        if (theta < 1e-4) {
          break;
        }
      }
      double length = 0;
      for (int k = 0; k < slope.length; k++) {
        if (slope[k] == Double.NEGATIVE_INFINITY) {
          direction[k] = 0;
          continue;
        }
        double pull = slope[k] / scale[k];
        if (k != 2 * m && price[k] <= 0 && pull < 0) {
          pull = 0;
        }
        direction[k] = pull + 0.6 * direction[k];
        length += direction[k] * direction[k];
      }
      if (length < 1e-15) {
        break;
      }
      double size = theta * Math.max(1e-9, target - bound) / length;
      for (int k = 0; k < slope.length; k++) {
        double moved = price[k] + size * direction[k] / scale[k];
        if (k == 2 * m) {
          price[k] = price[k] * moved < 0 ? 0 : moved;
        } else {
          price[k] = Math.max(0, moved);
        }
      }
    }
    System.arraycopy(bestPrice, 0, price, 0, price.length);
    return best;
  }

  /** Share of volume in what each place's room is worth, 0..1; 1/2 where it is worth nothing. */
  double[] volumeShares() {
    int m = problem.placeCount;
    double[] shares = new double[m];
    for (int j = 0; j < m; j++) {
      double ofVolume = price[j] > 0 ? price[j] * volumeRoom[j] : 0;
      double ofLoad = price[m + j] > 0 ? price[m + j] * loadRoom[j] : 0;
      shares[j] = ofVolume + ofLoad > 0 ? ofVolume / (ofVolume + ofLoad) : 0.5;
    }
    return shares;
  }

  /** The price of each box that follows, then the prices of side moment and of a move (0). */
  double[] boxPrices(boolean[][] allowed) {
    int n = problem.boxCount;
    int m = problem.placeCount;
    double[] prices = new double[n + 2];
    perLoad();
    for (int i = 0; i < n; i++) {
      double least = Double.POSITIVE_INFINITY;
      for (int j = 0; j < m; j++) {
        if (allowed[i][j]) {
          least = Math.min(least, priced(i, j));
        }
      }
      prices[i] = least;
    }
    prices[n] = price[2 * m];
    return prices;
  }
}
