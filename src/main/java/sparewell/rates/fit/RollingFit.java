package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.CountMixture;

/**
 * A quick fit that goes along with a growing log, under the weak prior, and forecasts by the
 * thousand. Fitted anew, it starts from where it was. The draws lie in a few groups of like size,
 * and within a group rates lie in narrow bins, each at its mean. Means are kept; a few thousandths
 * of the variance of the rate are lost.
 */
public final class RollingFit {
  private static final int DRAWS = 32;
  private static final int GROUPS = 4;
  private static final double BIN = 0.16; // of the log rate
  private static final double TAIL = 1e-5;
  private static final double WEIGHT_FLOOR = 1e-7;

  private final HyperPosterior hyper;
  private final int[] group; // of each draw
  private final double[] size = new double[GROUPS];
  private final List<List<Point[]>> points = new ArrayList<>(); // by style, then cover

  private record Point(double weight, double rate, double size) {}

  RollingFit(HyperPosterior hyper) {
    this.hyper = hyper;
    List<Draw> draws = hyper.draws();
    group = new int[draws.size()];
    List<Integer> order = new ArrayList<>();
    for (int d = 0; d < group.length; d++) {
      order.add(d);
    }
    order.sort(Comparator.comparingDouble(d -> draws.get(d).posterior().hyper().size));
    double passed = 0;
    double[] weight = new double[GROUPS];
    for (int d : order) {
      double chance = draws.get(d).weight();
      group[d] = Math.min(GROUPS - 1, (int) (GROUPS * (passed + chance / 2)));
      passed += chance;
      weight[group[d]] += chance;
      size[group[d]] += chance * Math.log(draws.get(d).posterior().hyper().size);
    }
    for (int g = 0; g < GROUPS; g++) {
      size[g] = weight[g] > 0 ? Math.exp(size[g] / weight[g]) : 1;
    }
    for (int s = 0; s < hyper.data().styles(); s++) {
      points.add(Arrays.asList(new Point[hyper.data().mix().length + 2][]));
    }
  }

  /** Fits a log. */
  public static RollingFit of(FitInput log) {
    return new RollingFit(HyperPosterior.of(new FitData(log, true), Hyperprior.WEAK, DRAWS));
  }

  /** Fits the same log some trips later. */
  public RollingFit after(FitInput grown) {
    return new RollingFit(hyper.after(new FitData(grown, true)));
  }

  /** Categories of cover logged. */
  public int covers() {
    return hyper.data().mix().length;
  }

  /** Pieces of a style lost over a stretch of use. */
  public CountDistribution losses(int style, RateFit.Term term) {
    List<Point[]> ofStyle = points.get(style);
    int place = term.cover() - Observation.NEVER_LOGGED;
    if (ofStyle.get(place) == null) {
      ofStyle.set(place, points(style, term.cover()));
    }
    CountMixture mixture = new CountMixture(1, TAIL);
    double[] mean = new double[1];
    double[] sizes = new double[1];
    for (Point point : ofStyle.get(place)) {
      mean[0] = point.rate * term.hours();
      sizes[0] = point.size * term.days();
      mixture.add(point.weight, mean, sizes);
    }
    return mixture.distribution();
  }

  private Point[] points(int style, int cover) {
    int lowest = (int) Math.floor(-30 / BIN);
    int bins = (int) Math.ceil(40 / BIN);
    double[] weight = new double[GROUPS * bins];
    double[] product = new double[GROUPS * bins];
    for (int d = 0; d < group.length; d++) {
      Draw draw = hyper.draws().get(d);
      RatePoints rates = draw.rate(style);
      double multiplier = draw.multiplier(cover);
      double first = rates.logFirst() + Math.log(multiplier);
      double step = rates.step();
      for (int i = 0; i < rates.count(); i++) {
        double place =
            i < rates.count() - 1 ? first + i * step : rates.logTail() + Math.log(multiplier);
        int bin = Math.max(0, Math.min(bins - 1, (int) Math.floor(place / BIN) - lowest));
        int k = group[d] * bins + bin;
        double chance = draw.weight() * rates.weight(i);
        weight[k] += chance;
        product[k] += chance * multiplier * rates.rate(i);
      }
    }
    List<Point> kept = new ArrayList<>();
    for (int k = 0; k < weight.length; k++) {
      if (weight[k] > WEIGHT_FLOOR) {
        kept.add(new Point(weight[k], product[k] / weight[k], size[k / bins]));
      }
    }
    return kept.toArray(Point[]::new);
  }
}
