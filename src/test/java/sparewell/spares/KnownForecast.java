package sparewell.spares;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.special.Gamma;
import sparewell.numerics.CountDistribution;
import sparewell.rates.Exposure;
import sparewell.rates.LossForecast;
import sparewell.season.ItemId;

/**
 * A forecast with known distributions: each style loses at a fixed rate, Poisson or negative
 * binomial, and its items share the losses evenly and independently.
 */
public final class KnownForecast implements LossForecast {
  private record Law(double perHour, double size, double share) {}

  private final Map<String, Law> laws = new LinkedHashMap<>();
  private final Map<List<Object>, CountDistribution> known = new HashMap<>();
  private boolean afloat;

  /** A style with Poisson losses. */
  public KnownForecast poisson(String style, double perHour) {
    laws.put(style, new Law(perHour, Double.POSITIVE_INFINITY, 1));
    return this;
  }

  /** A style with negative binomial losses of that size. */
  public KnownForecast negBin(String style, double perHour, double size) {
    laws.put(style, new Law(perHour, size, 1));
    return this;
  }

  /** The style's mean share of the hours afloat. */
  public KnownForecast share(String style, double share) {
    Law law = laws.get(style);
    laws.put(style, new Law(law.perHour, law.size, share));
    return this;
  }

  /** As where no trip has hours by style. */
  public KnownForecast hoursAfloat() {
    afloat = true;
    return this;
  }

  @Override
  public double meanShare(String style) {
    return afloat ? 1 : laws.containsKey(style) ? laws.get(style).share : 0;
  }

  @Override
  public boolean perHourAfloat() {
    return afloat;
  }

  @Override
  public CountDistribution styleLosses(String style, List<Exposure> exposures) {
    return counts(style, exposures.stream().mapToDouble(Exposure::hours).sum());
  }

  @Override
  public Map<ItemId, CountDistribution> itemLosses(String style, List<Exposure> exposures) {
    Map<ItemId, Double> hours = new HashMap<>();
    for (Exposure exposure : exposures) {
      if (exposure.hours() > 0) {
        double each = exposure.hours() / exposure.among().size();
        exposure.among().forEach(item -> hours.merge(item, each, Double::sum));
      }
    }
    Map<ItemId, CountDistribution> losses = new HashMap<>();
    hours.forEach((item, each) -> losses.put(item, counts(style, each)));
    return losses;
  }

  /**
   * Stages one by one: all that their stock has lasted with, and no more known of the way there.
   */
  @Override
  public double[] lastsThroughout(List<StagedStock> stocks) {
    double[] chances = new double[stocks.get(0).stages().size()];
    double least = 1;
    for (int j = 0; j < chances.length; j++) {
      double chance = 1;
      for (StagedStock stock : stocks) {
        List<Exposure> until =
            stock.stages().subList(0, j + 1).stream()
                .flatMap(stage -> stage.exposures().stream())
                .toList();
        chance *= lasts(stock.style(), until, stock.stages().get(j).pieces());
      }
      least = Math.min(least, chance);
      chances[j] = least;
    }
    return chances;
  }

  private double lasts(String style, List<Exposure> exposures, Map<ItemId, Integer> pieces) {
    double chance = 1;
    for (Map.Entry<ItemId, Integer> entry : pieces.entrySet()) {
      chance *=
          itemLosses(style, exposures)
              .getOrDefault(entry.getKey(), CountDistribution.none())
              .atMost(entry.getValue());
    }
    return chance;
  }

  private CountDistribution counts(String style, double hours) {
    Law law = laws.get(style);
    return law == null || hours == 0
        ? CountDistribution.none()
        : known.computeIfAbsent(List.of(law, hours), key -> counts(law, hours));
  }

  private static CountDistribution counts(Law law, double hours) {
    return law.size == Double.POSITIVE_INFINITY
        ? poisson(law.perHour * hours)
        : negBin(law.perHour * hours, law.size);
  }

  /** The Poisson distribution. */
  public static CountDistribution poisson(double mean) {
    double[] mass = new double[(int) Math.ceil(mean + 12 * Math.sqrt(mean) + 30)];
    for (int n = 0; n < mass.length; n++) {
      mass[n] = Math.exp(n * Math.log(mean) - mean - Gamma.logGamma(n + 1.0));
    }
    return CountDistribution.of(mass, mean);
  }

  /** The negative binomial distribution with that mean and size. */
  public static CountDistribution negBin(double mean, double size) {
    double p = size / (size + mean);
    double[] mass = new double[(int) Math.ceil(40 + 30 * mean / Math.min(1, size) + 30 * mean)];
    for (int n = 0; n < mass.length; n++) {
      mass[n] =
          Math.exp(
              Gamma.logGamma(n + size)
                  - Gamma.logGamma(size)
                  - Gamma.logGamma(n + 1.0)
                  + size * Math.log(p)
                  + n * Math.log1p(-p));
    }
    return CountDistribution.of(mass, mean);
  }
}
