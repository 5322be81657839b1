package sparewell.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import sparewell.numerics.NegativeBinomial;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Observation;

/**
 * Anglers with the same styles, made up as {@link SimulatedWorld} makes up one: log-normal typical
 * rates, from which each angler's differ by a log-normal factor of his own in every style.
 */
final class ClubWorld {
  static final int LARGEST = 160;
  static final double BETWEEN = 0.4;
  static final double EVENT_HOURS = 24;
  static final double[] COVERS = {0.2, 0.5, 0.8};
  static final int EVENT_COVER = 2;
  private static final int FAMILIES = 4;

  final List<Integer> family = new ArrayList<>();
  final double[] logTypical;
  final double size;
  final double slope;
  private final long seed;

  /**
   * An angler's season.
   *
   * @param rate true rate of each style at cover 0.5
   * @param log his trips
   */
  record Angler(double[] rate, List<Observation> log) {}

  ClubWorld(long seed) {
    this.seed = seed;
    RandomGenerator random = random(0);
    int styles = 12 + random.nextInt(13);
    double centre = Math.log(0.06) + 0.35 * random.nextGaussian();
    double familySpread = 0.2 + 0.4 * random.nextDouble();
    double styleSpread = 0.3 + 0.5 * random.nextDouble();
    size = 0.7 * Math.exp(random.nextDouble() * Math.log(5 / 0.7));
    slope = 0.8 + 0.3 * random.nextGaussian();
    double[] familyMean = new double[FAMILIES];
    for (int f = 0; f < FAMILIES; f++) {
      familyMean[f] = centre + familySpread * random.nextGaussian();
    }
    logTypical = new double[styles];
    for (int s = 0; s < styles; s++) {
      family.add(random.nextInt(FAMILIES));
      logTypical[s] = familyMean[family.get(s)] + styleSpread * random.nextGaussian();
    }
  }

  private RandomGenerator random(int number) {
    return new Well19937c(new SplittableRandom(seed * 1_000_003L + number).nextLong());
  }

  /**
   * An angler.
   *
   * @param number from 1
   * @param factor on all his rates
   */
  Angler angler(int number, int trips, double factor) {
    RandomGenerator random = random(number);
    double[] rate = new double[styles()];
    double[] used = new double[styles()];
    for (int s = 0; s < rate.length; s++) {
      rate[s] = factor * Math.exp(logTypical[s] + BETWEEN * random.nextGaussian());
      used[s] = new BetaDistribution(random, 2, 2).sample();
    }
    List<Observation> log = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      int cover = random.nextInt(COVERS.length);
      for (int s = 0; s < rate.length; s++) {
        if (random.nextDouble() < used[s]) {
          double hours = 1 + 5 * random.nextDouble();
          double mean = hours * rate[s] * multiplier(cover);
          log.add(new Observation(s, t, hours, 1, cover, draw(random, mean), false, 1));
        }
      }
    }
    return new Angler(rate, log);
  }

  private int draw(RandomGenerator random, double mean) {
    double rate = new GammaDistribution(random, size, mean / size).sample();
    return rate < 1e-12 ? 0 : new PoissonDistribution(random, rate, 1e-12, 100_000).sample();
  }

  int styles() {
    return logTypical.length;
  }

  double multiplier(int cover) {
    return Math.exp(slope * (COVERS[cover] - 0.5));
  }

  FitInput input(List<Observation> log) {
    return new FitInput(family, FAMILIES, log.isEmpty() ? 0 : COVERS.length, log);
  }

  /** Mean factor that covers put on the rates of a log. */
  double mix(List<Observation> log) {
    double hours = 0;
    double sum = 0;
    for (Observation one : log) {
      hours += one.hours();
      sum += one.hours() * multiplier(one.cover());
    }
    return hours > 0 ? sum / hours : (multiplier(0) + multiplier(1) + multiplier(2)) / 3;
  }

  /** Chance of 0, 1, ... pieces lost at the event at a rate. */
  double[] event(double rate) {
    double[] mass = new double[LARGEST + 1];
    double sum = 0;
    for (int n = 0; n <= LARGEST; n++) {
      mass[n] =
          Math.exp(NegativeBinomial.logPmf(n, EVENT_HOURS * rate * multiplier(EVENT_COVER), size));
      sum += mass[n];
    }
    mass[LARGEST] += Math.max(0, 1 - sum);
    return mass;
  }

  /**
   * Forecast by one who knows the typical rates, how anglers differ, size and slope: what no club
   * can surpass.
   */
  double[] ideal(int style, List<Observation> log) {
    int nodes = 61;
    double[] weight = new double[nodes];
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < nodes; i++) {
      double z = -4.5 + 9.0 * i / (nodes - 1);
      double rate = Math.exp(logTypical[style] + BETWEEN * z);
      weight[i] = -z * z / 2;
      for (Observation one : log) {
        if (one.style() == style) {
          double mean = one.hours() * rate * multiplier(one.cover());
          weight[i] += NegativeBinomial.logPmf(one.lostPieces(), mean, size);
        }
      }
      best = Math.max(best, weight[i]);
    }
    double[] mass = new double[LARGEST + 1];
    double sum = 0;
    for (int i = 0; i < nodes; i++) {
      double z = -4.5 + 9.0 * i / (nodes - 1);
      double chance = Math.exp(weight[i] - best);
      sum += chance;
      double[] given = event(Math.exp(logTypical[style] + BETWEEN * z));
      for (int n = 0; n <= LARGEST; n++) {
        mass[n] += chance * given[n];
      }
    }
    for (int n = 0; n <= LARGEST; n++) {
      mass[n] /= sum;
    }
    return mass;
  }
}
