package sparewell.rates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sparewell.numerics.NegativeBinomial;

/** The trips of one style, laid out for fast sums over them. */
final class StyleHistory {
  private static final int MOST_MULTIPLIED = 5;

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
        Comparator.comparingDouble(Observation::days)
            .thenComparingInt(Observation::lostPieces)
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
      return weighted || large ? sum - eachLog(rate) : sum - productLogs(rate);
    }

    /** Sum over the trips of (count + size) ln(1 + mean / size), each by its weight. */
    private double eachLog(double rate) {
      double sum = 0;
      int i = 0;
      for (int g = 0; g < groupEnd.length; g++) {
        double logs = 0;
        for (; i < groupEnd[g]; i++) {
          double part = perRate[i] * rate;
          logs += weight[i] * (part < 1e-2 ? Math.log1p(part) : Math.log(1 + part));
        }
        sum += exponent[g] * logs;
      }
      return sum;
    }

    /** The same with few logarithms: those of products over all trips of as many days. */
    private double productLogs(double rate) {
      double sum = 0;
      double counted = 1; // product of (1 + mean / size) to the power of the count
      double all = 1;
      double allLog = 0;
      int i = 0;
      for (int g = 0; g < groupEnd.length; g++) {
        double product = 1;
        double productLog = 0;
        for (; i < groupEnd[g]; i++) {
          product *= 1 + perRate[i] * rate;
          if (product > 1e100) {
            productLog += Math.log(product);
            product = 1;
          }
        }
        int count = groupCount[g];
        if (count > MOST_MULTIPLIED || productLog > 0 || product > 1e25) {
          sum += count * (productLog + Math.log(product));
        } else {
          for (int k = 0; k < count; k++) {
            counted *= product;
          }
          if (counted > 1e150) {
            sum += Math.log(counted);
            counted = 1;
          }
        }
        all *= product;
        allLog += productLog;
        boolean last = g + 1 == groupEnd.length || groupDays[g + 1] != groupDays[g];
        if (last || all > 1e150) {
          sum += size * groupDays[g] * (allLog + Math.log(all));
          all = 1;
          allLog = 0;
        }
      }
      return sum + Math.log(counted);
    }
  }
}
