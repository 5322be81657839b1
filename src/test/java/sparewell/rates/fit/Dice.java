package sparewell.rates.fit;

import java.util.List;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/** Plays losses out under a fit: hyperparameters, family means, rates and pieces are drawn. */
public final class Dice {
  private final RandomGenerator random = new Well19937c(11);
  private final RateFit fit;
  private final double[] drawWeights;
  private final int[] means;
  private HyperPosterior.Draw draw;

  /** Seeded, so that they fall the same way each time. */
  public Dice(RateFit fit) {
    this.fit = fit;
    drawWeights = fit.draws().stream().mapToDouble(HyperPosterior.Draw::weight).toArray();
    means = new int[fit.input().families()];
  }

  /** Draws hyperparameters and family means anew. */
  public void again() {
    draw = fit.draws().get(pick(drawWeights));
    for (int f = 0; f < means.length; f++) {
      means[f] = draw.given().mean(f, pick(draw.given().meanWeights(f)));
    }
  }

  /** Pieces of a style lost over all the terms together. */
  public int lost(int style, List<RateFit.Term> terms) {
    int family = fit.input().familyOfStyle().get(style);
    double[] weights = draw.given().given(style, means[family]);
    double walk = fit.walk().variance(style, 0);
    double rate =
        fit.data().styles[style].rate[pick(weights)]
            * Math.exp(Math.sqrt(walk) * random.nextGaussian() - walk / 2);
    int lost = 0;
    for (RateFit.Term term : terms) {
      double mean = term.hours() * rate * draw.multiplier(term.cover());
      double size = draw.given().hyper().size() * term.days();
      lost += poisson(mean * gamma(size) / size);
    }
    return lost;
  }

  /** A number from 0, with the given chances. */
  public int pick(double[] chances) {
    double u = random.nextDouble();
    for (int i = 0; i < chances.length; i++) {
      u -= chances[i];
      if (u < 0) {
        return i;
      }
    }
    return chances.length - 1;
  }

  /** A gamma variable of scale 1. */
  public double gamma(double shape) {
    return new GammaDistribution(random, shape, 1).sample();
  }

  private int poisson(double mean) {
    return mean < 1e-12 ? 0 : new PoissonDistribution(random, mean, 1e-12, 100_000).sample();
  }
}
