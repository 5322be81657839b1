package sparewell.rates.fit;

import java.util.Arrays;

/**
 * Family means and rates given one set of hyperparameters: given these, families are independent;
 * given its family's mean, so are styles. All integrals are sums over the grid of {@link FitData}.
 */
final class Conditional {
  private static final double DEPTH = 13; // e^-13 of the peak of a family's mean is left out
  private static final double FINE = 1.1; // of the least standard deviation, from point to point

  /** Density of a style's likeliest rate at least: logs that contradict each other stay finite. */
  private static final double FLOOR = 1e-200;

  /** Density e<sup>-300</sup> of a family's rates is still above that. */
  private static final double POSSIBLE = 300;

  private final FitData data;
  private final Hyper hyper;
  private final GammaDensity density;
  private final double[][] likelihood; // by style and point, over its peak
  private final double[] peak; // ln of each style's largest likelihood
  private final int[] best; // by style: point of it
  private final double[] rest; // by style: what its first point stands for
  private final int[] firstMean; // by family: number of the first point of its mean
  private final int[] meanStride;
  private final double[][] meanWeight;
  private final double[] centre; // of each family's log mean, before its log
  private final double[] spread;
  private final double logEvidence;

  Conditional(FitData data, Hyper hyper) {
    this.data = data;
    this.hyper = hyper;
    // What is narrower than the grid can tell from none counts as that wide.
    double narrow = 0.7 * data.widest;
    centre = new double[data.logged.size()];
    spread = new double[centre.length];
    for (int f = 0; f < centre.length; f++) {
      centre[f] = hyper.logRate() + data.others.familyCentre(f);
      spread[f] = Math.max(0.7 * FitData.STEP, data.others.familySpread(f, hyper.familySpread()));
    }
    int least = data.low - data.high;
    density = GammaDensity.of(Math.min(hyper.shape(), 1 / (narrow * narrow)), least);
    likelihood = new double[data.styles.length][];
    peak = new double[likelihood.length];
    best = new int[likelihood.length];
    rest = new double[likelihood.length];
    double sum = data.logCoefficients(hyper.size());
    for (int s = 0; s < likelihood.length; s++) {
      StyleData style = data.styles[s];
      rest[s] = GammaDensity.rest(density.shape() + style.lost, style.step);
      if (style.empty()) {
        likelihood[s] = new double[style.count];
        Arrays.fill(likelihood[s], 1);
      } else {
        double[] log = style.logLikelihood(hyper.size(), hyper.multiplier());
        best[s] = largest(log);
        peak[s] = log[best[s]];
        for (int i = 0; i < log.length; i++) {
          log[i] = Math.exp(log[i] - peak[s]);
        }
        likelihood[s] = log;
      }
    }
    meanStride = new int[data.logged.size()];
    strides();
    firstMean = new int[data.logged.size()];
    meanWeight = new double[firstMean.length][];
    for (int f = 0; f < firstMean.length; f++) {
      double logChance = family(f);
      sum += data.logged.get(f).isEmpty() ? 0 : logChance; // of no log: 1, but for rounding
    }
    logEvidence = sum;
  }

  private static int largest(double[] values) {
    int largest = 0;
    for (int i = 1; i < values.length; i++) {
      largest = values[i] > values[largest] ? i : largest;
    }
    return largest;
  }

  /** Sums need points only about as close as what they sum is wide. */
  private void strides() {
    double a = density.shape();
    for (int f = 0; f < meanStride.length; f++) {
      double precision = 1 / (spread[f] * spread[f]);
      for (int s : data.logged.get(f)) {
        double pieces = data.styles[s].effectivePieces(hyper.size());
        precision += a * (pieces + 1) / (a + pieces + 1);
      }
      meanStride[f] = Math.max(1, (int) (FINE / Math.sqrt(precision) / FitData.STEP));
    }
  }

  /** Weighs the points of a family's mean from its peak outward; ln of the chance of its log. */
  private double family(int f) {
    double[] value = new double[(data.high - data.low) / meanStride[f] + 1];
    Arrays.fill(value, Double.NaN);
    // From where no style lies so far above its family that it has no chance at all.
    int below = (int) (Math.log(Math.max(1, POSSIBLE / density.shape())) / FitData.STEP);
    int start = (int) Math.round(centre[f] / FitData.STEP);
    for (int s : data.logged.get(f)) {
      start = Math.max(start, (data.styles[s].first + best[s]) * data.styles[s].by - below);
    }
    int top = Math.max(0, Math.min(value.length - 1, (start - data.low) / meanStride[f]));
    for (int way = 1; way >= -1; way -= 2) {
      while (top + way >= 0
          && top + way < value.length
          && at(value, f, top + way) > at(value, f, top)) {
        top += way;
      }
    }
    double highest = at(value, f, top);
    int from = top;
    while (from > 0 && at(value, f, from - 1) > highest - DEPTH) {
      highest = Math.max(highest, value[--from]);
    }
    int to = top;
    while (to < value.length - 1 && at(value, f, to + 1) > highest - DEPTH) {
      highest = Math.max(highest, value[++to]);
    }
    firstMean[f] = data.low + from * meanStride[f];
    meanWeight[f] = Arrays.copyOfRange(value, from, to + 1);
    return highest + Math.log(normalise(meanWeight[f], highest));
  }

  /** ln of prior times likelihood at a point of a family's mean. */
  private double at(double[] value, int f, int i) {
    if (Double.isNaN(value[i])) {
      int mean = data.low + i * meanStride[f];
      double sum = logPrior(mean, f);
      for (int s : data.logged.get(f)) {
        sum += logChance(s, mean);
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

  /**
   * ln of the chance of a style's log given its family's mean, without what the size alone adds.
   */
  double logChance(int s, int mean) {
    return peak[s] + Math.log(evidence(s, mean) * data.styles[s].by);
  }

  /** The same as a number, over its peak, for one step of the grid. */
  private double evidence(int s, int mean) {
    StyleData style = data.styles[s];
    double[] given = likelihood[s];
    double[] table = density.table();
    int place = style.first * style.by - mean - density.least();
    double sum = FLOOR + (place < table.length ? given[0] * table[place] * (rest[s] - 1) : 0);
    for (int i = 0; i < given.length && place < table.length; i++, place += style.by) {
      sum += given[i] * table[place];
    }
    return sum;
  }

  /** Weights of a style's points given its family's mean; they sum to 1. */
  double[] given(int s, int mean) {
    double[] out = new double[data.styles[s].count];
    addPrior(s, mean, 1 / evidence(s, mean), out);
    timesLikelihood(s, out);
    return out;
  }

  private void addPrior(int s, int mean, double factor, double[] out) {
    StyleData style = data.styles[s];
    double[] table = density.table();
    int place = style.first * style.by - mean - density.least();
    out[best[s]] += factor * FLOOR;
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
    for (int j = 0; j < meanWeight[family].length; j++) {
      int mean = mean(family, j);
      addPrior(s, mean, meanWeight[family][j] / evidence(s, mean), out);
    }
    timesLikelihood(s, out);
    return out;
  }

  /**
   * Mean of 1 / the chance of a style's log given its family's mean, over its peak: the chance of
   * the rest of the log over that of all of it.
   */
  double inverseChance(int s, int family) {
    double sum = 0;
    for (int j = 0; j < meanWeight[family].length; j++) {
      sum += meanWeight[family][j] / evidence(s, mean(family, j));
    }
    return sum;
  }

  /** Likelihood of a style's rate at each point, over its peak. */
  double[] likelihood(int s) {
    return likelihood[s].clone();
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
