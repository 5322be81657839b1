package sparewell.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import sparewell.numerics.NegativeBinomial;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Observation;

/**
 * A season made up from known truth, with the truth: 12 to 24 styles in 4 families, and an event of
 * 24 hours for every style.
 */
public final class SimulatedWorld {
  static final int LARGEST = 160;

  /** Hours of the event. */
  public static final double EVENT_HOURS = 24;

  private static final double[] COVER = {0.2, 0.5, 0.8};

  /** Number of covers. */
  public static final int COVERS = COVER.length;

  /** The cover that takes most. */
  public static final int WORST_COVER = 2;

  private static final int FAMILIES = 4;

  /** Process that the rates and losses of a season are drawn from. */
  public enum Kind {
    /** Log-normal rates, as no gamma model assumes. */
    LOG_NORMAL("log-normal rates"),
    /** Gamma rates, as the model assumes. */
    GAMMA("gamma rates (the model)"),
    /** A shock on every trip, shared by all styles. */
    SHOCK("a shock per trip shared by all styles"),
    /** Rates that drift over the history, each style its own way. */
    DRIFT("drift over time"),
    /** Size that grows with hours. */
    HOURS("extra variation grows with hours");

    private final String title;

    Kind(String title) {
      this.title = title;
    }

    /** In the words of a table. */
    public String title() {
      return title;
    }
  }

  private final FitInput input;
  private final double[][][] truth; // by style and cover: chance of 0, 1, ... lost at the event
  private final double[] rateAtMix;

  /** A season of that many trips. */
  public SimulatedWorld(Kind kind, int trips, long seed) {
    RandomGenerator random = new Well19937c(new SplittableRandom(seed).nextLong());
    int styles = 12 + random.nextInt(13);
    double centre = Math.log(0.06) + 0.35 * random.nextGaussian();
    double familySpread = 0.2 + 0.4 * random.nextDouble();
    double styleSpread = 0.3 + 0.5 * random.nextDouble();
    double size = 0.7 * Math.exp(random.nextDouble() * Math.log(5 / 0.7));
    double slope = 0.8 + 0.3 * random.nextGaussian();
    double[] familyMean = new double[FAMILIES];
    for (int f = 0; f < FAMILIES; f++) {
      familyMean[f] = centre + familySpread * random.nextGaussian();
    }
    List<Integer> family = new ArrayList<>();
    double[] rate = new double[styles];
    double[] used = new double[styles];
    double[] drift = new double[styles];
    for (int s = 0; s < styles; s++) {
      int f = random.nextInt(FAMILIES);
      family.add(f);
      if (kind == Kind.GAMMA) {
        double variance = Math.exp(styleSpread * styleSpread) - 1;
        double mean = Math.exp(familyMean[f] + styleSpread * styleSpread / 2);
        rate[s] = mean * new GammaDistribution(random, 1 / variance, variance).sample();
      } else {
        rate[s] = Math.exp(familyMean[f] + styleSpread * random.nextGaussian());
      }
      used[s] = new BetaDistribution(random, 2, 2).sample();
      drift[s] = kind == Kind.DRIFT ? 0.5 * random.nextGaussian() : 0;
    }
    double shockSpread = kind == Kind.SHOCK ? 0.5 : 0;
    List<Observation> observations = new ArrayList<>();
    double[] mixHours = new double[COVERS];
    for (int t = 0; t < trips; t++) {
      int cover = random.nextInt(COVERS);
      double shock = Math.exp(shockSpread * random.nextGaussian() - shockSpread * shockSpread / 2);
      for (int s = 0; s < styles; s++) {
        if (random.nextDouble() < used[s]) {
          double hours = 1 + 5 * random.nextDouble();
          double mean = hours * rate[s] * Math.exp(slope * (COVER[cover] - 0.5)) * shock;
          mean *= Math.exp(drift[s] * (t + 0.5 - trips) / trips);
          double k = kind == Kind.HOURS ? size * hours / 3.5 : size;
          observations.add(new Observation(s, t, hours, 1, cover, draw(random, mean, k), false, 1));
          mixHours[cover] += hours;
        }
      }
    }
    input = new FitInput(family, FAMILIES, COVERS, observations);
    double mix = 0;
    double hours = 0;
    for (int c = 0; c < COVERS; c++) {
      mix += mixHours[c] * Math.exp(slope * (COVER[c] - 0.5));
      hours += mixHours[c];
    }
    mix = hours > 0 ? mix / hours : 1;
    truth = new double[styles][COVERS][LARGEST + 1];
    rateAtMix = new double[styles];
    GaussIntegrator shocks = new GaussIntegratorFactory().hermite(shockSpread > 0 ? 25 : 1);
    for (int s = 0; s < styles; s++) {
      rateAtMix[s] = rate[s] * mix;
      for (int c = 0; c < COVERS; c++) {
        double[] chances = truth[s][c];
        double sum = 0;
        for (int k = 0; k < shocks.getNumberOfPoints(); k++) {
          // Nodes for exp(-x squared) are those of a normal variable over the root of 2.
          double x = Math.sqrt(2) * shocks.getPoint(k);
          double shock = Math.exp(shockSpread * x - shockSpread * shockSpread / 2);
          double mean = EVENT_HOURS * rate[s] * Math.exp(slope * (COVER[c] - 0.5)) * shock;
          double r = kind == Kind.HOURS ? size * EVENT_HOURS / 3.5 : size;
          double weight = shocks.getWeight(k) / Math.sqrt(Math.PI);
          for (int n = 0; n <= LARGEST; n++) {
            chances[n] += weight * Math.exp(NegativeBinomial.logPmf(n, mean, r));
          }
        }
        for (double p : chances) {
          sum += p;
        }
        chances[LARGEST] += Math.max(0, 1 - sum);
      }
    }
  }

  private static int draw(RandomGenerator random, double mean, double size) {
    double rate = new GammaDistribution(random, size, mean / size).sample();
    return rate < 1e-12 ? 0 : new PoissonDistribution(random, rate, 1e-12, 100_000).sample();
  }

  /** The season as logged. */
  public FitInput input() {
    return input;
  }

  /** Number of styles. */
  public int styles() {
    return truth.length;
  }

  /** Chance of 0, 1, ... lost of a style at the event, in the cover that takes most. */
  public double[] truth(int style) {
    return truth(style, WORST_COVER);
  }

  /** Chance of 0, 1, ... lost of a style in the hours of the event, in a cover. */
  public double[] truth(int style, int cover) {
    return truth[style][cover];
  }

  double rateAtMix(int style) {
    return rateAtMix[style];
  }

  /** Cover of the event, the one that takes most, as the log knows it. */
  public int eventCover() {
    return logged(WORST_COVER);
  }

  /** A cover as the log knows it. */
  public int logged(int cover) {
    return input.observations().stream().anyMatch(o -> o.cover() == cover)
        ? cover
        : Observation.NEVER_LOGGED;
  }
}
