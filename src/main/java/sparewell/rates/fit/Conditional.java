package sparewell.rates.fit;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Family means and rates given one set of hyperparameters: given these, families are independent;
 * given its family's mean, so are styles. All integrals are sums over the grid of {@link FitData}.
 */
final class Conditional {
  private static final double DEPTH = 13; // e^-13 of the peak of a family's mean is left out
  private static final double FINE = 1.1; // of the least standard deviation, from point to point

  /** Sums below are those of logs: what {@link GammaDensity} leaves out might matter to them. */
  private static final double SMALL = 1e-28;

  private static final double WIDE = 4.5; // prior standard deviations of a family without a log

  private final FitData data;
  private final Hyper hyper;
  private final GammaDensity density;
  private final double[][] log; // ln of each style's likelihood over its peak; null without a log
  private final double[] peak; // ln of each style's largest likelihood
  private final double[][] likelihood;
  private final double[] rest; // by style: what its first point stands for
  private final int[] firstMean; // by family: number of the first point of its mean
  private final int[] meanStride;
  private final double[][] meanWeight;
  private final double[] centre; // of each family's log mean, before its log
  private final double[] spread;
  private final double logEvidence;

  /**
   * Works it out.
   *
   * @param whole whether families without a log are asked for too
   */
  Conditional(FitData data, Hyper hyper, boolean whole) {
    this.data = data;
    this.hyper = hyper;
    // What is narrower than the grid can tell from none counts as that wide.
    double narrow = 0.7 * data.widest;
    centre = new double[data.stylesOf.length];
    spread = new double[centre.length];
    for (int f = 0; f < centre.length; f++) {
      centre[f] = hyper.logRate + data.others.familyCentre(f);
      spread[f] = Math.max(0.7 * FitData.STEP, data.others.familySpread(f, hyper.familySpread));
    }
    int least = data.low - data.high;
    density = new GammaDensity(Math.min(hyper.shape, 1 / (narrow * narrow)), FitData.STEP, least);
    log = new double[data.styles.length][];
    likelihood = new double[log.length][];
    peak = new double[log.length];
    rest = new double[log.length];
    Map<Integer, Between.Place[]> shifts = new HashMap<>();
    double sum = data.logCoefficients(hyper.size);
    for (int s = 0; s < log.length; s++) {
      StyleData style = data.styles[s];
      rest[s] = density.rest(density.shape() + style.lost, style.by);
      if (style.empty()) {
        log[s] = new double[style.count];
        likelihood[s] = new double[style.count];
        Arrays.fill(likelihood[s], 1);
      } else {
        Between.Place[] shift = shifts.computeIfAbsent(style.by, by -> shift(style.step));
        log[s] = style.logLikelihood(hyper.size, hyper.multiplier, shift);
        peak[s] = max(log[s]);
        likelihood[s] = new double[log[s].length];
        for (int i = 0; i < log[s].length; i++) {
          log[s][i] -= peak[s];
          likelihood[s][i] = Math.exp(log[s][i]);
        }
        sum += peak[s];
      }
    }
    meanStride = new int[data.stylesOf.length];
    strides();
    firstMean = new int[data.stylesOf.length];
    meanWeight = new double[firstMean.length][];
    for (int f = 0; f < firstMean.length; f++) {
      boolean logged = false;
      for (int s : data.stylesOf[f]) {
        logged |= !data.styles[s].empty();
      }
      sum += logged ? family(f) : 0;
      if (!logged && whole) {
        unlogged(f);
      }
    }
    logEvidence = sum;
  }

  private Between.Place[] shift(double step) {
    Between.Place[] shift = new Between.Place[hyper.multiplier.length + 1];
    for (int c = 0; c < shift.length; c++) {
      double m = c < hyper.multiplier.length ? hyper.multiplier[c] : 1;
      shift[c] = Between.Place.of(StyleData.inTable(Math.log(m / hyper.size)) / step);
    }
    return shift;
  }

  private static double max(double[] values) {
    double max = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      max = Math.max(max, value);
    }
    return max;
  }

  /** Sums need points only about as close as what they sum is wide. */
  private void strides() {
    double a = density.shape();
    for (int f = 0; f < meanStride.length; f++) {
      double precision = 1 / (spread[f] * spread[f]);
      for (int s : data.stylesOf[f]) {
        double pieces = data.styles[s].effectivePieces(hyper.size);
        precision += data.styles[s].empty() ? 0 : a * (pieces + 1) / (a + pieces + 1);
      }
      meanStride[f] = Math.max(1, (int) (FINE / Math.sqrt(precision) / FitData.STEP));
    }
  }

  /** Weighs the points of a family's mean from its peak outward; ln of the chance of its log. */
  private double family(int f) {
    double[] value = new double[(data.high - data.low) / meanStride[f] + 1];
    Arrays.fill(value, Double.NaN);
    int top = ((int) Math.round(centre[f] / FitData.STEP) - data.low) / meanStride[f];
    top = Math.max(0, Math.min(value.length - 1, top));
    for (int way = 1; way >= -1; way -= 2) {
      while (top + way >= 0
          && top + way < value.length
          && at(value, f, top + way) > at(value, f, top)) {
        top += way;
      }
    }
    double best = at(value, f, top);
    int from = top;
    while (from > 0 && at(value, f, from - 1) > best - DEPTH) {
      from--;
    }
    int to = top;
    while (to < value.length - 1 && at(value, f, to + 1) > best - DEPTH) {
      to++;
    }
    firstMean[f] = data.low + from * meanStride[f];
    meanWeight[f] = Arrays.copyOfRange(value, from, to + 1);
    return best + Math.log(normalise(meanWeight[f], best));
  }

  /** ln of prior times likelihood at a point of a family's mean. */
  private double at(double[] value, int f, int i) {
    if (Double.isNaN(value[i])) {
      int mean = data.low + i * meanStride[f];
      double sum = logPrior(mean, f);
      for (int s : data.stylesOf[f]) {
        if (!data.styles[s].empty()) {
          sum += logEvidence(s, mean);
        }
      }
      value[i] = sum;
    }
    return value[i];
  }

  private double logPrior(int mean, int f) {
    double away = (mean * FitData.STEP - centre[f]) / spread[f];
    double width = meanStride[f] * FitData.STEP;
    return -away * away / 2 + Math.log(width / (spread[f] * Math.sqrt(2 * Math.PI)));
  }

  private void unlogged(int f) {
    int from = (int) Math.floor((centre[f] - WIDE * spread[f]) / FitData.STEP);
    int to = (int) Math.ceil((centre[f] + WIDE * spread[f]) / FitData.STEP);
    firstMean[f] = Math.max(data.low, Math.min(from, data.high - 1));
    int length = Math.min(data.high, Math.max(to, data.low + 1)) - firstMean[f];
    meanWeight[f] = new double[length / meanStride[f] + 1];
    for (int j = 0; j < meanWeight[f].length; j++) {
      meanWeight[f][j] = logPrior(mean(f, j), f);
    }
    normalise(meanWeight[f], max(meanWeight[f]));
  }

  /** Turns logs into weights that sum to 1; their sum before, over that of the best. */
  private static double normalise(double[] logs, double best) {
    double sum = 0;
    for (int j = 0; j < logs.length; j++) {
      logs[j] = Math.exp(logs[j] - best);
      sum += logs[j];
    }
    for (int j = 0; j < logs.length; j++) {
      logs[j] /= sum;
    }
    return sum;
  }

  /** ln of the chance of a style's log given its family's mean, over its peak. */
  private double logEvidence(int s, int mean) {
    double sum = evidence(s, mean);
    int by = data.styles[s].by;
    return sum > SMALL ? Math.log(sum * by) : terms(s, mean, new double[data.styles[s].count]);
  }

  /** The same as a number, where it is not too small for one. */
  private double evidence(int s, int mean) {
    StyleData style = data.styles[s];
    double[] given = likelihood[s];
    double[] table = density.table();
    int place = density.place(style.first * style.by - mean);
    double sum = place < table.length ? given[0] * table[place] * (rest[s] - 1) : 0;
    for (int i = 0; i < given.length && place < table.length; i++, place += style.by) {
      sum += given[i] * table[place];
    }
    return sum;
  }

  /**
   * Weights of a style's points given its family's mean, summing to 1, where the likelihood and the
   * family may be so far apart that their product is too small for a number.
   *
   * @param out receives them
   * @return ln of their sum before
   */
  private double terms(int s, int mean, double[] out) {
    StyleData style = data.styles[s];
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < out.length; i++) {
      out[i] = density.log((style.first + i) * style.by - mean);
      if (i == 0) {
        out[i] += Math.log(rest[s]);
      }
      out[i] += log[s][i];
      best = Math.max(best, out[i]);
    }
    return best + Math.log(normalise(out, best) * style.by);
  }

  /** Weights of a style's points given its family's mean; they sum to 1. */
  double[] given(int s, int mean) {
    double[] out = new double[data.styles[s].count];
    double sum = evidence(s, mean);
    if (sum > SMALL) {
      addPrior(s, mean, 1 / sum, out);
      timesLikelihood(s, out);
    } else {
      terms(s, mean, out);
    }
    return out;
  }

  private void addPrior(int s, int mean, double factor, double[] out) {
    StyleData style = data.styles[s];
    double[] table = density.table();
    int place = density.place(style.first * style.by - mean);
    if (place < table.length) {
      out[0] += factor * table[place] * (rest[s] - 1);
    }
    for (int i = 0; i < out.length && place < table.length; i++, place += style.by) {
      out[i] += factor * table[place];
    }
  }

  private void timesLikelihood(int s, double[] out) {
    for (int i = 0; i < out.length; i++) {
      out[i] *= likelihood[s][i];
    }
  }

  /** Weights of a style's points; they sum to 1. */
  double[] rate(int s, int family) {
    double[] out = new double[data.styles[s].count];
    double[] far = new double[out.length];
    for (int j = 0; j < meanWeight[family].length; j++) {
      double weight = meanWeight[family][j];
      double all = evidence(s, mean(family, j));
      if (all > SMALL) {
        addPrior(s, mean(family, j), weight / all, out);
      } else {
        double[] given = given(s, mean(family, j));
        for (int i = 0; i < out.length; i++) {
          far[i] += weight * given[i];
        }
      }
    }
    timesLikelihood(s, out);
    double sum = 0;
    for (int i = 0; i < out.length; i++) {
      out[i] += far[i];
      sum += out[i];
    }
    for (int i = 0; i < out.length; i++) {
      out[i] /= sum;
    }
    return out;
  }

  /** Expectation of a function of a style's rate, known at each point, given its family's mean. */
  double expected(int s, int mean, double[] function) {
    StyleData style = data.styles[s];
    double[] table = density.table();
    int place = density.place(style.first * style.by - mean);
    double all = 0;
    double sum = 0;
    double first = rest[s];
    for (int i = 0; i < function.length && place < table.length; i++, place += style.by) {
      double weight = first * likelihood[s][i] * table[place];
      first = 1;
      all += weight;
      sum += weight * function[i];
    }
    if (all > SMALL) {
      return sum / all;
    }
    double[] weights = new double[function.length];
    terms(s, mean, weights);
    double far = 0;
    for (int i = 0; i < weights.length; i++) {
      far += weights[i] * function[i];
    }
    return far;
  }

  /**
   * ln of the chance of a style's log given its family's mean, without what the size alone adds.
   */
  double logChance(int s, int mean) {
    return peak[s] + logEvidence(s, mean);
  }

  /**
   * ln of a style's likelihood at each point over the chance of its log given the rest of the log:
   * what its log tells is then counted once, by the likelihood, and not again by the draw's weight.
   */
  double[] logLikelihood(int s, int family) {
    double[] less = new double[meanWeight[family].length];
    for (int j = 0; j < less.length; j++) {
      less[j] = -logEvidence(s, mean(family, j));
    }
    double most = max(less);
    double inverse = 0;
    for (int j = 0; j < less.length; j++) {
      inverse += meanWeight[family][j] * Math.exp(less[j] - most);
    }
    double[] out = log[s].clone();
    for (int i = 0; i < out.length; i++) {
      out[i] += most + Math.log(inverse);
    }
    return out;
  }

  /** Standard deviation of a family's log mean before its log. */
  double familySpread(int family) {
    return spread[family];
  }

  /** ln of the chance of the whole log given the hyperparameters, up to a constant. */
  double logEvidence() {
    return logEvidence;
  }

  Hyper hyper() {
    return hyper;
  }

  /** Shape of the gamma distribution within a family, as it counts here. */
  double shape() {
    return density.shape();
  }

  /** Number on the grid of a point of a family's mean. */
  int mean(int family, int point) {
    return firstMean[family] + point * meanStride[family];
  }

  /** Weights of the points of a family's mean; they sum to 1. */
  double[] meanWeights(int family) {
    return meanWeight[family].clone();
  }
}
