package sparewell.rates.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sparewell.numerics.NegativeBinomial;

/** The trips of one style, laid out for fast sums over them. */
final class StyleHistory {
  private static final double LARGE = 1e3;
  private static final Comparator<Observation> ORDER =
      Comparator.<Observation>comparingDouble(o -> o.hours() / o.days())
          .thenComparingDouble(Observation::days)
          .thenComparingInt(Observation::lostPieces)
          .thenComparingInt(Observation::cover)
          .thenComparingDouble(Observation::weight);

  private final List<Observation> censored = new ArrayList<>();
  private final int[] cover; // those seen, with their sums
  private final LogSums[] sums;
  private final int[] count; // pieces lost and days seen together, and how often
  private final double[] days;
  private final double[] often;
  private final double logHours;
  private final double plainPieces;
  private final double lost;
  private final double allDays;

  /** Pieces lost on a trip of so many days. */
  private record Loss(int count, double days) {}

  StyleHistory(List<Observation> observations) {
    Map<Integer, List<Observation>> byCover = new TreeMap<>();
    Map<Loss, Double> losses =
        new TreeMap<>(Comparator.comparingInt(Loss::count).thenComparingDouble(Loss::days));
    double logs = 0;
    double plain = 0;
    double all = 0;
    double time = 0;
    for (Observation o : observations.stream().sorted(ORDER).toList()) {
      if (!o.atLeast()) {
        byCover.computeIfAbsent(o.cover(), number -> new ArrayList<>()).add(o);
        if (o.lostPieces() > 0) {
          losses.merge(new Loss(o.lostPieces(), o.days()), o.weight(), Double::sum);
          logs += o.weight() * o.lostPieces() * Math.log(o.hours());
        }
        plain += o.weight() * o.lostPieces();
        time += o.weight() * o.days();
      } else if (o.lostPieces() > 0) {
        censored.add(o);
        all += o.weight() * o.lostPieces();
        time += o.weight() * o.days();
      }
      // Ran out with nothing lost says only that demand was 0 or more.
    }
    logHours = logs;
    plainPieces = plain;
    lost = plain + all;
    allDays = time;
    cover = byCover.keySet().stream().mapToInt(Integer::intValue).toArray();
    sums = byCover.values().stream().map(LogSums::new).toArray(LogSums[]::new);
    count = losses.keySet().stream().mapToInt(Loss::count).toArray();
    days = losses.keySet().stream().mapToDouble(Loss::days).toArray();
    often = losses.values().stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Whether there is nothing to learn from. */
  boolean empty() {
    return sums.length == 0 && censored.isEmpty();
  }

  /**
   * What the pieces lost are worth as independent events, each trip by its weight: y losses of a
   * negative binomial tell no more than its size.
   */
  double pieces(double size) {
    return lost > 0 ? lost / (1 + lost / (size * allDays)) : 0;
  }

  /**
   * Its likelihood as a function of the rate at the given size of a day and multipliers.
   *
   * @param size size of the negative binomial for one day, &gt; 0
   * @param multiplier of each cover, &gt; 0
   * @param shifts shared with other styles: by cover, the mix last; filled as needed, so good for
   *     one size, one set of multipliers and one lattice
   */
  Likelihood at(double size, double[] multiplier, LatticeShift[] shifts) {
    return new Likelihood(size, multiplier, shifts);
  }

  private static double factor(int cover, double[] multiplier) {
    return cover < 0 ? 1 : multiplier[cover];
  }

  /** ln of the likelihood over the log rate. */
  final class Likelihood {
    /** What the pieces seen are worth. */
    final double pieces;

    /** Pieces seen, each trip by its weight. */
    final double lost = StyleHistory.this.lost;

    /** Effective hours. */
    final double exposure;

    private final double constant;
    private final double size;
    private final double[] multiplier;
    private final LatticeShift[] shifts;

    private Likelihood(double size, double[] multiplier, LatticeShift[] shifts) {
      this.size = size;
      this.multiplier = multiplier;
      this.shifts = shifts;
      pieces = pieces(size);
      double sum = logHours;
      double seen = 0;
      for (int c = 0; c < cover.length; c++) {
        double factor = factor(cover[c], multiplier);
        seen += sums[c].hours() * factor;
        sum += sums[c].pieces() * Math.log(factor);
      }
      for (int i = 0; i < count.length; i++) {
        sum += often[i] * NegativeBinomial.logCoefficient(count[i], size * days[i]);
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
      double sum = constant + plainPieces * logRate + ranOut(rate);
      for (int c = 0; c < cover.length; c++) {
        sum -= sums[c].at(rate * factor(cover[c], multiplier) / size, size);
      }
      return sum;
    }

    private double ranOut(double rate) {
      if (censored.isEmpty()) {
        return 0;
      }
      double sum = 0;
      for (Observation o : censored) {
        double mean = rate * o.hours() * factor(o.cover(), multiplier);
        sum += o.weight() * NegativeBinomial.logAtLeast(o.lostPieces(), mean, size * o.days());
      }
      return sum;
    }

    /**
     * ln of the likelihood at equally spaced log rates.
     *
     * @param halvings halvings of the widest step that make the lattice
     * @param first lattice number of the first
     * @param stride distance in the lattice
     * @param rate their exponentials
     */
    double[] at(int halvings, int first, int stride, double[] rate) {
      double unit = RateNodes.WIDEST / (1 << halvings);
      double[] out = new double[rate.length];
      if (size > LARGE) {
        for (int i = 0; i < out.length; i++) {
          out[i] = at((first + i * stride) * unit, rate[i]);
        }
        return out;
      }
      for (int i = 0; i < out.length; i++) {
        out[i] = constant + plainPieces * ((first + i * stride) * unit) + ranOut(rate[i]);
      }
      double width = (out.length - 1) * stride * unit / LogSums.STEP;
      double[] room = new double[(int) width + LatticeShift.BEFORE + LatticeShift.AFTER + 3];
      for (int c = 0; c < cover.length; c++) {
        int place = cover[c] < 0 ? multiplier.length : cover[c];
        if (shifts[place] == null) {
          shifts[place] = new LatticeShift(Math.log(factor(cover[c], multiplier) / size), halvings);
        }
        sums[c].takeOff(shifts[place], size, first, stride, out.length, out, room);
      }
      return out;
    }
  }
}
