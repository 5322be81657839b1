package sparewell.rates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sparewell.numerics.NegativeBinomial;

/** The trips of one style, laid out for fast sums over them. */
final class StyleHistory {
  private final List<Observation> censored = new ArrayList<>();
  private final double[] hours; // grouped by count and days
  private final int[] cover;
  private final double[] weight;
  private final int[] groupEnd;
  private final int[] groupCount;
  private final double[] groupDays;
  private final boolean weighted;
  private final double lost;

  StyleHistory(List<Observation> observations) {
    List<Observation> plain = new ArrayList<>();
    for (Observation o : observations) {
      if (o.atLeast() && o.lostPieces() > 0) {
        censored.add(o);
      } else if (!o.atLeast()) {
        plain.add(o);
      }
      // Ran out with nothing lost says only that demand was 0 or more.
    }
    plain.sort(
        Comparator.comparingInt(Observation::lostPieces)
            .thenComparingDouble(Observation::days)
            .thenComparingInt(Observation::cover)
            .thenComparingDouble(Observation::hours)
            .thenComparingDouble(Observation::weight));
    censored.sort(
        Comparator.comparingInt(Observation::lostPieces)
            .thenComparingDouble(Observation::days)
            .thenComparingInt(Observation::cover)
            .thenComparingDouble(Observation::hours)
            .thenComparingDouble(Observation::weight));
    int n = plain.size();
    hours = new double[n];
    cover = new int[n];
    weight = new double[n];
    List<Integer> ends = new ArrayList<>();
    boolean anyWeight = false;
    double sum = 0;
    for (int i = 0; i < n; i++) {
      Observation o = plain.get(i);
      hours[i] = o.hours();
      cover[i] = o.cover();
      weight[i] = o.weight();
      anyWeight |= o.weight() != 1;
      sum += o.weight() * o.lostPieces();
      boolean last =
          i + 1 == n
              || plain.get(i + 1).lostPieces() != o.lostPieces()
              || plain.get(i + 1).days() != o.days();
      if (last) {
        ends.add(i + 1);
      }
    }
    for (Observation o : censored) {
      sum += o.weight() * o.lostPieces();
    }
    weighted = anyWeight;
    lost = sum;
    groupEnd = ends.stream().mapToInt(Integer::intValue).toArray();
    groupCount = new int[groupEnd.length];
    groupDays = new double[groupEnd.length];
    for (int g = 0; g < groupEnd.length; g++) {
      groupCount[g] = plain.get(groupEnd[g] - 1).lostPieces();
      groupDays[g] = plain.get(groupEnd[g] - 1).days();
    }
  }

  /** Whether there is nothing to learn from. */
  boolean empty() {
    return hours.length == 0 && censored.isEmpty();
  }

  /** Pieces lost, each trip by its weight. */
  double pieces() {
    return lost;
  }

  /** Its likelihood as a function of the rate at the given size of a day and multipliers. */
  Likelihood at(double size, double[] multiplier) {
    return new Likelihood(size, multiplier);
  }

  private static double factor(int cover, double[] multiplier) {
    return cover < 0 ? 1 : multiplier[cover];
  }

  /** ln of the likelihood over the log rate. */
  final class Likelihood {
    /** Effective pieces seen, each trip by its weight. */
    final double pieces = lost;

    /** Effective hours. */
    final double exposure;

    private final double constant;
    private final double[] perRate; // hours x multiplier / size
    private final double[] exponent; // count + size, by group
    private final boolean large;
    private final double size;
    private final double[] multiplier;

    private Likelihood(double size, double[] multiplier) {
      this.size = size;
      this.multiplier = multiplier;
      large = size > 1e3;
      perRate = new double[hours.length];
      exponent = new double[groupEnd.length];
      double sum = 0;
      double seen = 0;
      int i = 0;
      for (int g = 0; g < groupEnd.length; g++) {
        double k = size * groupDays[g];
        exponent[g] = groupCount[g] + k;
        double each = NegativeBinomial.logCoefficient(groupCount[g], k);
        for (; i < groupEnd[g]; i++) {
          double effective = hours[i] * factor(cover[i], multiplier);
          seen += weight[i] * effective;
          perRate[i] = effective / k;
          if (groupCount[g] > 0) {
            sum += weight[i] * (each + groupCount[g] * Math.log(effective));
          }
        }
      }
      for (Observation o : censored) {
        seen += o.weight() * o.hours() * factor(o.cover(), multiplier);
      }
      constant = sum;
      exposure = seen;
    }

    /**
     * ln of the likelihood at a log rate.
     *
     * @param rate its exponential
     */
    double at(double logRate, double rate) {
      double sum = constant;
      double plainPieces = lost;
      for (Observation o : censored) {
        plainPieces -= o.weight() * o.lostPieces();
        double mean = rate * o.hours() * factor(o.cover(), multiplier);
        sum += o.weight() * NegativeBinomial.logAtLeast(o.lostPieces(), mean, size * o.days());
      }
      sum += plainPieces * logRate;
      int i = 0;
      for (int g = 0; g < groupEnd.length; g++) {
        int end = groupEnd[g];
        double logs = 0;
        if (weighted || large) {
          for (; i < end; i++) {
            double part = perRate[i] * rate;
            logs += weight[i] * (part < 0.03 ? shortLog(part) : Math.log(1 + part));
          }
        } else {
          double product = 1;
          for (; i < end; i++) {
            product *= 1 + perRate[i] * rate;
            if (product > 1e200) {
              logs += Math.log(product);
              product = 1;
            }
          }
          logs += Math.log(product);
        }
        sum -= exponent[g] * logs;
      }
      return sum;
    }

    /** ln(1 + p) for 0 &le; p &lt; 0.03, to 1e-12 relative. */
    private static double shortLog(double p) {
      double tail = p * (1 / 5.0 - p * (1 / 6.0 - p * (1 / 7.0 - p / 8)));
      return p * (1 - p * (0.5 - p * (1 / 3.0 - p * (0.25 - tail))));
    }
  }
}
