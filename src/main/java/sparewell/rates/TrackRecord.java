package sparewell.rates;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import sparewell.numerics.CountDistribution;
import sparewell.numerics.CountMixture;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.season.Trip;

/**
 * The angler's own history replayed: from the fifth trip on, each trip is foreseen from what was
 * known before it, and compared with what happened. A prediction is one style on one trip, for the
 * hours it was thrown there.
 *
 * @param lines one for each policy
 * @param trips trips foreseen
 * @param fits how often the rates were fitted anew: the more seldom the more trips are known
 * @param sentence which policy did better, or that there is too little history to tell
 */
public record TrackRecord(List<Line> lines, int trips, int fits, String sentence) {
  static final int KNOWN_FIRST = 4;
  private static final double GROWTH = 1.5;
  private static final double GROWTH_OF_MUCH = 2;
  private static final int MUCH = 40;
  private static final int DRAWS = 32;
  private static final double INTERVAL = 0.9;
  private static final int FLAT = 3;

  public TrackRecord {
    lines = List.copyOf(lines);
  }

  /**
   * How a policy did.
   *
   * @param policy which: recommendation, flat three or raw average
   * @param predictions styles on trips foreseen
   * @param runOuts how often more was lost than the policy would have carried
   * @param runOutPercent the same in percent; absent without predictions
   * @param meanCarried pieces of a style carried on a trip, on average; absent without predictions
   * @param coverageWantedProbability wanted chance that losses fall in the policy's interval;
   *     absent where it has none
   * @param coverageGotProbability share of losses that fell in it, a count on its edge counting in
   *     part
   */
  public record Line(
      String policy,
      int predictions,
      int runOuts,
      OptionalDouble runOutPercent,
      OptionalDouble meanCarried,
      OptionalDouble coverageWantedProbability,
      OptionalDouble coverageGotProbability) {}

  /** Replays a season. */
  public static TrackRecord of(Season season) {
    SeasonHistory whole = SeasonHistory.of(season);
    int trips = whole.trips().size();
    int foreseen = Math.max(0, trips - KNOWN_FIRST);
    Tally recommendation = new Tally();
    Tally flat = new Tally();
    Tally raw = new Tally();
    Map<String, Style> styles = season.stylesByName();
    List<List<SeasonHistory.Use>> uses = new ArrayList<>();
    for (int t = 0; t < trips; t++) {
      uses.add(new ArrayList<>());
    }
    // A loss on a trip whose hours leave the style out was nobody's plan, so nobody's forecast.
    whole.uses().stream()
        .filter(use -> !use.assumed())
        .forEach(use -> uses.get(use.trip()).add(use));
    HyperPosterior fit = null;
    ReplayForecast forecast = null;
    int fits = 0;
    int nextFit = KNOWN_FIRST;
    SeasonHistory before = whole;
    RawRates rates = new RawRates(0);
    double wantedRunOuts = 0;
    for (int t = 0; t < trips; t++) {
      if (t >= KNOWN_FIRST) {
        Trip trip = whole.trips().get(t);
        if (t == nextFit) {
          before = whole.before(season, t);
          FitInput input = before.input(trip.date(), season.settings().halfLifeMonths());
          FitData data = new FitData(input, true);
          fit = fit == null ? HyperPosterior.of(data, Hyperprior.WEAK, DRAWS) : fit.after(data);
          forecast = new ReplayForecast(fit);
          rates = new RawRates(whole.styles().size());
          before.uses().stream().filter(use -> !use.assumed()).forEach(rates::learn);
          fits++;
          nextFit = (int) (t * (t < MUCH ? GROWTH : GROWTH_OF_MUCH));
        }
        for (SeasonHistory.Use use : asKnown(uses.get(t), trip, before)) {
          String name = whole.styles().get(use.style());
          double chance = chance(season, styles.get(name));
          CountDistribution losses = forecast.losses(use.style(), term(whole, trip, use, fit));
          recommendation.add(losses, losses.quantile(chance), use);
          CountDistribution poisson = poisson(rates.mean(use));
          raw.add(poisson, poisson.quantile(chance), use);
          flat.add(null, FLAT, use);
          wantedRunOuts += 1 - chance;
        }
        asKnown(uses.get(t), trip, before).forEach(rates::learn);
      }
    }
    List<Line> lines =
        List.of(
            recommendation.line("recommendation"),
            flat.line("flat three"),
            raw.line("raw average"));
    return new TrackRecord(lines, foreseen, fits, Verdict.of(trips, lines, wantedRunOuts));
  }

  /**
   * The uses of a trip with the hours that a forecaster of that time would have counted: shares of
   * trips without style hours are those known then, and all hours are hours afloat where no trip
   * had style hours yet.
   */
  private static List<SeasonHistory.Use> asKnown(
      List<SeasonHistory.Use> uses, Trip trip, SeasonHistory before) {
    List<SeasonHistory.Use> known = new ArrayList<>();
    for (SeasonHistory.Use use : uses) {
      double hours = use.hours();
      if (use.byShare() || before.perHourAfloat()) {
        String style = before.styles().get(use.style());
        hours = trip.fishedHours().getAsDouble() * before.meanShare().get(style);
      }
      if (hours > 0) {
        known.add(
            new SeasonHistory.Use(
                use.trip(),
                use.style(),
                hours,
                use.lostPieces(),
                use.ranOut(),
                use.assumed(),
                use.byShare()));
      }
    }
    return known;
  }

  private static double chance(Season season, Style style) {
    double set = season.settings().chanceWantedProbability();
    return season.settings().chanceFromCommandLine()
        ? set
        : style.chanceWantedProbability().orElse(set);
  }

  private static RateFit.Term term(
      SeasonHistory history, Trip trip, SeasonHistory.Use use, HyperPosterior fit) {
    int cover =
        trip.cover()
            .map(history.covers()::indexOf)
            .map(c -> c < fit.data().mix().length ? c : Observation.NEVER_LOGGED)
            .orElse(Observation.MIX);
    return new RateFit.Term(use.hours(), trip.days(), cover);
  }

  private static CountDistribution poisson(double mean) {
    CountMixture mixture = new CountMixture(1);
    mixture.add(1, new double[] {mean}, new double[] {1e9});
    return mixture.distribution();
  }

  /** Losses per hour so far, style by style; a style not yet used has that of all. */
  private static final class RawRates {
    private final double[] lost;
    private final double[] hours;
    private double allLost;
    private double allHours;

    RawRates(int styles) {
      lost = new double[styles];
      hours = new double[styles];
    }

    void learn(SeasonHistory.Use use) {
      lost[use.style()] += use.lostPieces();
      hours[use.style()] += use.hours();
      allLost += use.lostPieces();
      allHours += use.hours();
    }

    double mean(SeasonHistory.Use use) {
      double known = hours[use.style()];
      double rate = known > 0 ? lost[use.style()] / known : allHours > 0 ? allLost / allHours : 0;
      return rate * use.hours();
    }
  }

  /** Running sums of one policy. */
  private static final class Tally {
    private int predictions;
    private int runOuts;
    private long carried;
    private int judged;
    private double inside;

    void add(CountDistribution losses, int stock, SeasonHistory.Use use) {
      predictions++;
      carried += stock;
      if (use.lostPieces() > stock) {
        runOuts++;
      }
      if (losses != null && !use.ranOut()) {
        judged++;
        double below = losses.atMost(use.lostPieces() - 1);
        double upTo = losses.atMost(use.lostPieces());
        double low = (1 - INTERVAL) / 2;
        double overlap = Math.min(upTo, 1 - low) - Math.max(below, low);
        if (overlap > 0 && upTo > below) {
          inside += overlap / (upTo - below);
        }
      }
    }

    Line line(String policy) {
      boolean any = predictions > 0;
      return new Line(
          policy,
          predictions,
          runOuts,
          any ? OptionalDouble.of(100.0 * runOuts / predictions) : OptionalDouble.empty(),
          any ? OptionalDouble.of((double) carried / predictions) : OptionalDouble.empty(),
          judged > 0 ? OptionalDouble.of(INTERVAL) : OptionalDouble.empty(),
          judged > 0 ? OptionalDouble.of(inside / judged) : OptionalDouble.empty());
    }
  }
}
