package sparewell.experience;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Prior of a further angler's losses from other logs: a meta-analytic-predictive prior.
 *
 * <p>A style's typical rate comes from the logs that have it and from its family; a style in no log
 * has its family's rate, one of an unknown family that of a typical style, each with more variance.
 * Anglers differ from it by {@link #logBetween}.
 */
public final class Club {
  // Priors before any log, those of the fit of a single log.
  private static final Normal RATE = new Normal(Math.log(0.06), 0.49);
  private static final Normal FAMILY = new Normal(Math.log(0.4), 0.64);
  private static final Normal STYLE = new Normal(Math.log(0.5), 0.49);
  private static final Normal SIZE = new Normal(Math.log(2), 1);
  private static final double COVER_VARIANCE = 0.25;
  private static final double BETWEEN_RATES = 0.5; // half-normal scales of spreads between logs
  private static final double BETWEEN_COVERS = 0.3;
  private static final double BETWEEN_SPREADS = 0.4;

  private final Pool pool;
  private final Unit unit;
  private final long anglers;
  private final RateEffects rates;
  private final SortedMap<Key, Normal> families = new TreeMap<>();
  private final Normal typical;
  private final double familyVariance;
  private final double styleVariance;
  private final double shift;
  private final Normal size;

  /** Source of a style's typical rate. */
  public enum Source {
    /** Other logs have the style. */
    STYLE,
    /** They have its family. */
    FAMILY,
    /** They have other families only. */
    OTHERS
  }

  /**
   * A style's typical rate among anglers.
   *
   * @param log of it, per hour
   * @param familyVariance variance of that log rate known from the family alone
   */
  public record Typical(Normal log, double familyVariance, Source source, long anglers) {}

  private Club(Pool pool, Unit unit) {
    this.pool = pool;
    this.unit = unit;
    anglers = pool.logs(new Key(Kind.SPREAD, unit, Kind.Spread.COMMON_RATE.key()));
    Optional<RandomEffects> common =
        effects(new Key(Kind.SPREAD, unit, Kind.Spread.COMMON_RATE.key()), RATE, BETWEEN_RATES);
    typical = common.map(of -> new Normal(of.mean(), of.meanVariance())).orElse(RATE);
    shift = common.map(RandomEffects::likeliestBetween).orElse(0.0);
    familyVariance = square(spread(Kind.Spread.FAMILY_SPREAD, FAMILY));
    styleVariance = square(spread(Kind.Spread.STYLE_SPREAD, STYLE));
    size =
        effects(new Key(Kind.SPREAD, Unit.TIMES, Kind.Spread.DAY_SIZE.key()), SIZE, BETWEEN_SPREADS)
            .map(of -> new Normal(of.mean(), of.newVariance()))
            .orElse(SIZE);
    Normal anyFamily = new Normal(typical.mean(), typical.variance() + familyVariance);
    keys(Kind.FAMILY)
        .forEach(
            key ->
                effects(key, anyFamily, BETWEEN_RATES)
                    .ifPresent(of -> families.put(key, new Normal(of.mean(), of.meanVariance()))));
    SortedMap<Key, List<Pool.Cell>> cells = new TreeMap<>();
    SortedMap<Key, Normal> before = new TreeMap<>();
    for (Key key : keys(Kind.STYLE)) {
      cells.put(key, pool.of(key));
      before.put(key, ofFamily(pool.labels().get(key).familyKey()));
    }
    rates = RateEffects.of(cells, before);
  }

  /** Prior from all logs whose rates are in a unit; empty where there is none. */
  public static Optional<Club> of(Pool pool, Unit unit) {
    boolean any =
        pool.cells().keySet().stream()
            .anyMatch(key -> key.kind() == Kind.STYLE && key.unit() == unit);
    return any ? Optional.of(new Club(pool, unit)) : Optional.empty();
  }

  private static double square(double x) {
    return x * x;
  }

  private List<Key> keys(Kind kind) {
    return pool.cells().keySet().stream()
        .filter(key -> key.kind() == kind && key.unit() == unit)
        .toList();
  }

  private double spread(Kind.Spread of, Normal before) {
    return Math.exp(
        effects(new Key(Kind.SPREAD, Unit.TIMES, of.key()), before, BETWEEN_SPREADS)
            .map(RandomEffects::mean)
            .orElse(before.mean()));
  }

  private Optional<RandomEffects> effects(Key key, Normal before, double between) {
    List<RandomEffects.Study> studies =
        pool.of(key).stream()
            .map(
                cell -> new RandomEffects.Study(cell.estimate(), 1 / cell.precision(), cell.logs()))
            .collect(Collectors.toList());
    return studies.isEmpty()
        ? Optional.empty()
        : Optional.of(
            RandomEffects.of(
                studies, new RandomEffects.Before(between, before.mean(), 1 / before.variance())));
  }

  /** The typical rate of any style of a family, by the family's name as compared. */
  private Normal ofFamily(String family) {
    Normal known = families.get(new Key(Kind.FAMILY, unit, family));
    return known == null
        ? new Normal(typical.mean(), typical.variance() + familyVariance + styleVariance)
        : new Normal(known.mean(), known.variance() + styleVariance);
  }

  /**
   * A style in all logs together.
   *
   * @param style its name as one of the logs spells it
   * @param trips trips in them on which it was thrown
   * @param typical log of the typical rate per hour
   */
  public record Line(
      String style,
      String family,
      long logs,
      long trips,
      double hours,
      long pieces,
      Normal typical) {}

  /** Every style that any log has, by name. */
  public List<Line> lines() {
    return keys(Kind.STYLE).stream().map(this::line).toList();
  }

  private Line line(Key key) {
    Pool.Label label = pool.labels().get(key);
    List<Pool.Cell> cells = pool.of(key);
    return new Line(
        label.name(),
        label.family(),
        pool.logs(key),
        cells.stream().mapToLong(Pool.Cell::trips).sum(),
        cells.stream().mapToDouble(Pool.Cell::hours).sum(),
        cells.stream().mapToLong(Pool.Cell::pieces).sum(),
        rates.styles().get(key));
  }

  public long anglers() {
    return anglers;
  }

  public Unit unit() {
    return unit;
  }

  /**
   * A style's typical rate among anglers.
   *
   * @param style its name, in the form in which names are compared
   * @param family its family likewise
   */
  public Typical style(String style, String family) {
    Key key = new Key(Kind.STYLE, unit, style);
    Normal known = rates.styles().get(key);
    Normal ofFamily = ofFamily(family);
    if (known != null) {
      return new Typical(known, ofFamily.variance(), Source.STYLE, pool.logs(key));
    }
    Key familyKey = new Key(Kind.FAMILY, unit, family);
    return families.containsKey(familyKey)
        ? new Typical(ofFamily, ofFamily.variance(), Source.FAMILY, pool.logs(familyKey))
        : new Typical(ofFamily, ofFamily.variance(), Source.OTHERS, anglers);
  }

  /**
   * Multiplier of a further angler's rates in a cover, relative to the usual mix of covers.
   *
   * @param cover its name, in the form in which names are compared
   * @return its logarithm; absent where no log has the cover
   */
  public Optional<Normal> cover(String cover) {
    return effects(
            new Key(Kind.COVER, Unit.TIMES, cover), new Normal(0, COVER_VARIANCE), BETWEEN_COVERS)
        .map(of -> new Normal(of.mean(), of.newVariance()));
  }

  /**
   * Usual share of the hours afloat that those who have a style throw it; absent where none has.
   *
   * @param style its name, in the form in which names are compared
   */
  public Optional<Double> share(String style) {
    double afloat = middleHours(new Key(Kind.SPREAD, unit, Kind.Spread.COMMON_RATE.key()));
    double thrown = middleHours(new Key(Kind.STYLE, unit, style));
    return afloat > 0 && thrown > 0 ? Optional.of(Math.min(1, thrown / afloat)) : Optional.empty();
  }

  /** Median of the hours in each log: one log of a million hours does not move it far. */
  private double middleHours(Key key) {
    List<Pool.Cell> byHours =
        pool.of(key).stream()
            .sorted(Comparator.comparingDouble(cell -> cell.hours() / cell.logs()))
            .toList();
    double left = pool.logs(key) / 2.0;
    for (Pool.Cell cell : byHours) {
      left -= cell.logs();
      if (left <= 0) {
        return cell.hours() / cell.logs();
      }
    }
    return 0;
  }

  /**
   * ln of the standard deviation of a style's log rate between anglers, what moves all of an
   * angler's rates included; with {@link #logBetweenSpread} its mean square is the posterior's.
   */
  public double logBetween() {
    return rates.logBetween();
  }

  /** Posterior standard deviation of {@link #logBetween}. */
  public double logBetweenSpread() {
    return rates.logBetweenSpread();
  }

  /**
   * Likeliest standard deviation, on the log scale, of the factor common to all rates of an angler.
   * Not its mean: few logs tell next to nothing of it, and a part of {@link #logBetween} taken for
   * common by that alone would be lost as soon as a log shows that nothing is.
   */
  public double shift() {
    return shift;
  }

  /** ln of the negative binomial's size for a further angler's days. */
  public Normal daySize() {
    return size;
  }
}
