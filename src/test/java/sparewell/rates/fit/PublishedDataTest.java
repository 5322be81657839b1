package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import sparewell.numerics.NegativeBinomial;
import sparewell.numerics.QuasiNewton;
import sparewell.reference.Reference;

/** The likelihood and the sums against published data sets and exact fits made in R. */
class PublishedDataTest {
  private static final double NO_EXTRA_VARIATION = 1e9; // days of a trip, so that size is large

  /** The family's mean, 1 in its own units, is where the prior has it. */
  private static final Hyperprior AROUND_ONE =
      new Hyperprior(0, 1, 0, 1, 0, 1, 0, 1, 0.5, Hyperprior.Walk.NONE);

  /** A rate's sums for a family mean of exp(logMean): hours are counted in its units. */
  private static final class Sums {
    private final FitData data;
    private final Conditional given;
    private final double size;
    private final double logMean;
    private final double logHours;

    Sums(List<Observation> trips, double logMean, double shape, double size, double... m) {
      this.logMean = logMean;
      this.size = size;
      List<Observation> scaled = scaled(trips, logMean, 1);
      data = new FitData(new FitInput(List.of(0), 1, m.length, scaled), AROUND_ONE, Beliefs.NONE);
      given = new Conditional(data, new Hyper(0, 0.5, shape, size, m));
      logHours = scaled.stream().mapToDouble(one -> one.lostPieces() * Math.log(one.hours())).sum();
    }

    double logEvidence() {
      // So far from the log that the grid does not reach there: no chance at all.
      return data.low > 0 || data.high < 0
          ? -1e3
          : data.logCoefficients(size) + given.logChance(0, 0) + logHours;
    }

    double mean() {
      if (data.low > 0 || data.high < 0) {
        return 0;
      }
      double[] weights = given.given(0, 0);
      double mean = 0;
      for (int i = 0; i < weights.length; i++) {
        mean += weights[i] * data.styles[0].rate[i];
      }
      return mean * Math.exp(logMean);
    }
  }

  private static List<Observation> scaled(List<Observation> trips, double logRate, double days) {
    return trips.stream()
        .map(
            o ->
                new Observation(
                    0,
                    0,
                    o.hours() * Math.exp(logRate),
                    o.days() * days,
                    o.cover(),
                    o.lostPieces(),
                    o.atLeast(),
                    1))
        .toList();
  }

  private static Observation seen(double hours, int lost) {
    return new Observation(0, 0, hours, NO_EXTRA_VARIATION, Observation.MIX, lost, false, 1);
  }

  /** ln of the chance of y in t when the rate is Gamma(shape a, rate b): a negative binomial. */
  private static double closedForm(int y, double t, double a, double b) {
    return Gamma.logGamma(a + y)
        - Gamma.logGamma(a)
        - Gamma.logGamma(y + 1.0)
        + a * Math.log(b / (b + t))
        + y * Math.log(t / (b + t));
  }

  @Test
  void sumsMeetTheConjugateClosedForms() {
    for (double shape : new double[] {0.3, 0.823, 2.7, 11}) {
      for (int y : new int[] {0, 1, 4, 30}) {
        for (double t : new double[] {1, 25, 300}) {
          for (double mean : new double[] {0.05, 0.2, 1}) {
            double b = shape / mean;
            Sums ours = new Sums(List.of(seen(t, y)), Math.log(mean), shape, 100);
            String where = "shape " + shape + ", y " + y + ", t " + t + ", mean " + mean;
            // What has a chance of e^-8 under a family weighs nothing beside other means of it.
            double exact = closedForm(y, t, shape, b);
            if (exact < -8) {
              continue;
            }
            assertEquals(exact, ours.logEvidence(), 2e-3, where);
            double posterior = (shape + y) / (b + t);
            assertEquals(posterior, ours.mean(), 2e-3 * posterior, where);
          }
        }
      }
    }
  }

  @Test
  void pumpsEmpiricalBayes() {
    List<Reference.Row> pumps = Reference.read("pumps-empirical-bayes.csv");
    QuasiNewton.Peak top =
        QuasiNewton.maximise(
            x -> {
              double sum = 0;
              for (Reference.Row pump : pumps) {
                sum += pump(pump, x[1], Math.exp(x[0])).logEvidence();
              }
              return sum;
            },
            new double[2],
            HyperSampler.diagonal(2, 0.5),
            1e-10,
            100);
    // R 4.2.2, optim on the marginal likelihood: shape, mean a/b, log-likelihood
    assertEquals(0.82296508, Math.exp(top.at()[0]), 1e-3);
    assertEquals(0.65229100, Math.exp(top.at()[1]), 1e-3);
    assertEquals(-32.25783630, top.value(), 1e-3);
    for (Reference.Row pump : pumps) {
      double mean = pump.number("eb_mean");
      assertEquals(mean, pump(pump, top.at()[1], Math.exp(top.at()[0])).mean(), 1e-3 * mean);
    }
  }

  private static Sums pump(Reference.Row pump, double logMean, double shape) {
    return new Sums(List.of(seen(pump.number("t"), pump.whole("x"))), logMean, shape, 100);
  }

  @Test
  void pumpsFullBayes() {
    // alpha ~ Exp(1), beta ~ Gamma(0.1, 1). Published posterior means: BUGS Examples Volume 1,
    // "Pumps", as run by MultiBUGS, 20000 samples; exact ones by 2-D sums in R 4.2.2.
    double[] published = {
      0.05969, 0.1021, 0.08897, 0.1157, 0.6, 0.6084, 0.8904, 0.8946, 1.588, 1.995
    };
    double[] exact = {
      0.0598183, 0.101826, 0.0892417, 0.115788, 0.601338, 0.609388, 0.892536, 0.892536, 1.58631,
      1.98983
    };
    List<Reference.Row> pumps = Reference.read("pumps-empirical-bayes.csv");
    double[] sums = new double[pumps.size()];
    double alphaSum = 0;
    double total = 0;
    for (double logAlpha = -3.5; logAlpha < 1.6; logAlpha += 0.17) {
      for (double logBeta = -4.5; logBeta < 2.2; logBeta += 0.2) {
        double alpha = Math.exp(logAlpha);
        double beta = Math.exp(logBeta);
        double log = -alpha + logAlpha + 0.1 * logBeta - beta;
        double[] means = new double[sums.length];
        for (int i = 0; i < sums.length; i++) {
          Sums pump = pump(pumps.get(i), Math.log(alpha / beta), alpha);
          log += pump.logEvidence();
          means[i] = pump.mean();
        }
        double weight = Math.exp(log + 34);
        total += weight;
        alphaSum += weight * alpha;
        for (int i = 0; i < sums.length; i++) {
          sums[i] += weight * means[i];
        }
      }
    }
    assertEquals(0.697169, alphaSum / total, 0.002);
    for (int i = 0; i < sums.length; i++) {
      assertEquals(exact[i], sums[i] / total, 0.002 * exact[i]);
      assertEquals(published[i], sums[i] / total, 0.01 * published[i]);
    }
  }

  @Test
  void shipsPoissonAndNegativeBinomialFitsAreLimits() {
    // Without a family to lean on: rates of ship types, and year x period as covers.
    double[] order = {-6.4, 0, 0, 0, 0, 0, 0, 0, 0};
    QuasiNewton.Peak limit = ships(NO_EXTRA_VARIATION, order);
    double[] top = limit.at();
    // R 4.2.2: glm(incidents ~ type + year + period + offset(log(service)), poisson, MASS::ships);
    // McCullagh and Nelder (1989) table 6.3 from memory: -6.41, -0.54, -0.69, -0.08, 0.33,
    // 0.70, 0.82, 0.45, 0.38
    double[] coefficients = {
      -6.405901561,
      -0.543344301,
      -0.687401647,
      -0.075961422,
      0.325579456,
      0.697140427,
      0.818426577,
      0.453426639,
      0.384466958
    };
    for (int i = 0; i < coefficients.length; i++) {
      assertEquals(coefficients[i], top[i], 1e-3, "coefficient " + i);
    }
    assertEquals(-68.280771, limit.value(), 1e-3);
    // R 4.2.2, profile log-likelihood of the negative binomial fit: it rises with size for ever.
    assertEquals(-83.7248, ships(1, top).value(), 1e-3);
    assertEquals(-68.3412, ships(1097, top).value(), 1e-3);
  }

  private static QuasiNewton.Peak ships(double size, double[] start) {
    List<Reference.Row> rows = Reference.read("ships.csv");
    List<String> types = List.of("A", "B", "C", "D", "E");
    List<String> years = List.of("60", "65", "70", "75");
    return QuasiNewton.maximise(
        x -> {
          double[] multiplier = new double[8];
          for (int year = 0; year < 4; year++) {
            for (int period = 0; period < 2; period++) {
              double effect = (year == 0 ? 0 : x[4 + year]) + (period == 0 ? 0 : x[8]);
              multiplier[2 * year + period] = Math.exp(effect);
            }
          }
          double sum = 0;
          for (int type = 0; type < types.size(); type++) {
            List<Observation> trips = new ArrayList<>();
            for (Reference.Row row : rows) {
              if (row.text("type").equals(types.get(type))) {
                int cover =
                    2 * years.indexOf(row.text("year")) + (row.text("period").equals("75") ? 1 : 0);
                trips.add(
                    new Observation(
                        0, 0, row.number("service"), 1, cover, row.whole("incidents"), false, 1));
              }
            }
            double logRate = x[0] + (type == 0 ? 0 : x[type]);
            List<Observation> scaled = scaled(trips, logRate, size);
            StyleData style = StyleData.of(scaled, 0);
            sum += style.logLikelihood(1, multiplier)[-style.first];
            for (Observation one : scaled) {
              sum += one.lostPieces() * Math.log(one.hours());
              sum += NegativeBinomial.logCoefficient(one.lostPieces(), one.days());
            }
          }
          return sum;
        },
        start,
        HyperSampler.diagonal(9, 0.02),
        1e-9,
        400);
  }

  @Test
  void aFitOfTheShipsStaysFinite() {
    List<Observation> observations = new ArrayList<>();
    List<String> types = List.of("A", "B", "C", "D", "E");
    for (Reference.Row row : Reference.read("ships.csv")) {
      observations.add(
          new Observation(
              types.indexOf(row.text("type")),
              0,
              row.number("service") / 100,
              1,
              row.text("period").equals("75") ? 1 : 0,
              row.whole("incidents"),
              false,
              1));
    }
    RateFit fit = RateFit.of(new FitInput(List.of(0, 0, 0, 0, 0), 1, 2, observations));
    assertTrue(fit.converged());
    assertTrue(fit.multiplier(1).mean() > 1, "later operation had more damage");
    for (int s = 0; s < 5; s++) {
      assertTrue(fit.rate(s).low90() > 0 && fit.rate(s).high90() < 10);
    }
  }

  @Test
  void theHierarchyAgreesWithAnExactFitInR() {
    // R 4.2.2, negative binomial with gamma rates, adaptive Gauss-Hermite sums, 41 nodes:
    // ln family means, cover slope, 1/sqrt(shape), size, log-likelihood
    double[] means = {-3.61361390, -2.89229604, -3.48714273, -2.06079951, -1.63996516};
    Fit r = new Fit(means, 1.11768589, 0.39465567, 1.23290112);
    assertEquals(-289.81134381, r.logLikelihood(), 2e-3);
    Map<String, Double> posterior = r.posteriorMeans();
    for (Reference.Row row : Reference.read("simulated-24-styles-fit.csv")) {
      double mean = row.number("ga_mean");
      assertEquals(mean, posterior.get(row.text("style")), 1e-3 * mean, row.text("style"));
    }
    // A maximum: no small step in any direction does better.
    for (int i = 0; i < 8; i++) {
      for (double step : new double[] {-0.02, 0.02}) {
        double[] m = means.clone();
        if (i < 5) {
          m[i] += step;
        }
        Fit near =
            new Fit(
                m,
                1.11768589 + (i == 5 ? step : 0),
                0.39465567 * Math.exp(i == 6 ? step : 0),
                1.23290112 * Math.exp(i == 7 ? step : 0));
        assertTrue(near.logLikelihood() < r.logLikelihood());
      }
    }
  }

  @Test
  void withoutExtraVariationTheHierarchyIsGammaPoisson() {
    // R 4.2.2, closed form of the gamma-Poisson likelihood at its maximum
    Fit poisson =
        new Fit(
            new double[] {-3.61638359, -2.90922958, -3.46919855, -2.01464795, -1.69003832},
            1.08666955,
            0.45591667,
            1e4);
    assertEquals(-301.35643689, poisson.logLikelihood(), 0.02);
  }

  /** The simulated 24 styles at given hyperparameters; every trip is a cover of its own. */
  private static final class Fit {
    private final Map<String, Sums> styles = new LinkedHashMap<>();

    Fit(double[] familyMeans, double slope, double variation, double size) {
      Map<String, List<Observation>> byStyle = new LinkedHashMap<>();
      Map<String, Integer> family = new LinkedHashMap<>();
      Map<String, Integer> trip = new LinkedHashMap<>();
      double[] multiplier = new double[30];
      for (Reference.Row row : Reference.read("simulated-24-styles.csv")) {
        int t = trip.computeIfAbsent(row.text("trip"), id -> trip.size());
        multiplier[t] = Math.exp(slope * row.number("cover"));
        family.put(row.text("style"), row.text("family").charAt(1) - '1');
        byStyle
            .computeIfAbsent(row.text("style"), id -> new ArrayList<>())
            .add(new Observation(0, 0, row.number("hours"), 1, t, row.whole("losses"), false, 1));
      }
      byStyle.forEach(
          (style, trips) ->
              styles.put(
                  style,
                  new Sums(
                      trips,
                      familyMeans[family.get(style)],
                      1 / (variation * variation),
                      size,
                      multiplier)));
    }

    double logLikelihood() {
      return styles.values().stream().mapToDouble(Sums::logEvidence).sum();
    }

    Map<String, Double> posteriorMeans() {
      Map<String, Double> means = new LinkedHashMap<>();
      styles.forEach((style, sums) -> means.put(style, sums.mean()));
      return means;
    }
  }
}
