package sparewell.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.NegativeBinomial;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;

/**
 * A made-up season with known truth: 24 styles in 4 families, log-normal rates, negative binomial
 * losses, cover in three categories, an event of 24 hours of every style in the thickest cover.
 */
final class AllocationWorld {
  static final int STYLES = 24;
  private static final int FAMILIES = 4;
  private static final double EVENT_HOURS = 24;
  private static final String[] COVERS = {"open", "mixed", "thick"};
  private static final double[] THICKNESS = {0.2, 0.5, 0.8};
  private static final int LARGEST = 4000;

  private final SeasonMaker log = new SeasonMaker().carryAtLeast(3);
  private final List<CountDistribution> truth = new ArrayList<>();
  private final double[] lost = new double[STYLES];
  private final double[] thrown = new double[STYLES];

  /**
   * @param familyFactor by how many times more the rates of the first and the last family differ
   *     than {@link SimulatedWorld} has it
   */
  AllocationWorld(int tripCount, double familyFactor, long seed) {
    RandomGenerator random = new Well19937c(new SplittableRandom(seed).nextLong());
    double centre = Math.log(0.06) + 0.35 * random.nextGaussian();
    double familySpread = 0.2 + 0.4 * random.nextDouble();
    double styleSpread = 0.3 + 0.5 * random.nextDouble();
    double size = 0.7 * Math.exp(random.nextDouble() * Math.log(5 / 0.7));
    double slope = 0.8 + 0.3 * random.nextGaussian();
    double[] familyMean = new double[FAMILIES];
    for (int f = 0; f < FAMILIES; f++) {
      double apart = Math.log(familyFactor) * ((double) f / (FAMILIES - 1) - 0.5);
      familyMean[f] = centre + familySpread * random.nextGaussian() + apart;
    }
    double[] rate = new double[STYLES];
    double[] used = new double[STYLES];
    for (int s = 0; s < STYLES; s++) {
      int f = random.nextInt(FAMILIES);
      log.style("S" + s, "F" + f);
      rate[s] = Math.exp(familyMean[f] + styleSpread * random.nextGaussian());
      used[s] = new BetaDistribution(random, 2, 2).sample();
      double mean = EVENT_HOURS * rate[s] * Math.exp(slope * (THICKNESS[2] - 0.5));
      truth.add(distribution(mean, size));
    }
    for (int t = 0; t < tripCount; t++) {
      int cover = random.nextInt(COVERS.length);
      String id = "T" + t;
      double total = 0;
      for (int s = 0; s < STYLES; s++) {
        if (random.nextDouble() < used[s]) {
          double h = 1 + 5 * random.nextDouble();
          double mean = h * rate[s] * Math.exp(slope * (THICKNESS[cover] - 0.5));
          int pieces = draw(random, mean, size);
          log.thrown(id, "S" + s, h);
          if (pieces > 0) {
            log.lost(id, item(s), pieces, false);
          }
          lost[s] += pieces;
          thrown[s] += h;
          total += h;
        }
      }
      log.trip(id, 7 * t, Math.max(1, total), COVERS[cover]);
    }
  }

  private static CountDistribution distribution(double mean, double size) {
    List<Double> mass = new ArrayList<>();
    double sum = 0;
    for (int n = 0; n < LARGEST && 1 - sum > 1e-12; n++) {
      double p = Math.exp(NegativeBinomial.logPmf(n, mean, size));
      mass.add(p);
      sum += p;
    }
    return CountDistribution.of(mass.stream().mapToDouble(Double::doubleValue).toArray(), mean);
  }

  private static int draw(RandomGenerator random, double mean, double size) {
    double rate = new GammaDistribution(random, size, mean / size).sample();
    return rate < 1e-12 ? 0 : new PoissonDistribution(random, rate, 1e-12, 100_000).sample();
  }

  static ItemId item(int style) {
    return new ItemId("S" + style, "", "");
  }

  /** The season as an angler would have logged it. */
  Season season() {
    log.asOf = LocalDate.of(2026, 1, 1);
    log.planningHours = EVENT_HOURS;
    log.planningDays = 1;
    return log.season();
  }

  /** Cover of the event. */
  Optional<String> cover() {
    return Optional.of(COVERS[2]);
  }

  double eventHours() {
    return EVENT_HOURS;
  }

  /** True distributions of the losses at the event. */
  List<CountDistribution> truth() {
    return truth;
  }

  /** Raw rate of a style; that of all styles where it was never thrown. */
  double rawRate(int style) {
    double allLost = 0;
    double allHours = 0;
    for (int s = 0; s < STYLES; s++) {
      allLost += lost[s];
      allHours += thrown[s];
    }
    return thrown[style] > 0 ? lost[style] / thrown[style] : allHours > 0 ? allLost / allHours : 1;
  }
}
