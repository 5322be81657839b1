package sparewell.rates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.RateFit;
import sparewell.rates.history.SeasonHistory;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Trip;

/**
 * Losses that may be slips of the pen: so many that a fit of the log without them gives them a
 * chance below one in ten thousand, P(N &ge; lost) of the style's predictive distribution for that
 * trip.
 */
final class SlipFinder {
  private static final double CHANCE = 1e-4;
  private static final int FEWEST = 8; // pieces that are worth a question
  private static final double TIMES = 6; // what all styles lose in as many hours
  private static final int MOST = 3; // fits made to judge
  private static final int DRAWS = 32; // of hyperparameters in such a fit

  private SlipFinder() {}

  /** Adds a finding for each, at the cell of its largest row. */
  static void find(Season season, SeasonHistory history, FitInput input, Findings findings) {
    double lost = 0;
    double hours = 0;
    for (Observation one : input.observations()) {
      lost += one.lostPieces();
      hours += one.hours();
    }
    List<Observation> doubtful = new ArrayList<>();
    for (Observation one : input.observations()) {
      double others = (lost - one.lostPieces() + 1) / (hours - one.hours() + 1);
      if (one.lostPieces() >= FEWEST && one.lostPieces() > TIMES * others * one.hours()) {
        doubtful.add(one);
      }
    }
    doubtful.sort(
        Comparator.comparingInt(Observation::lostPieces)
            .reversed()
            .thenComparingInt(Observation::style)
            .thenComparingInt(Observation::trip));
    for (Observation one : doubtful.subList(0, Math.min(MOST, doubtful.size()))) {
      FitInput without =
          new FitInput(
              input.familyOfStyle(),
              input.families(),
              input.covers(),
              input.observations().stream().filter(other -> !other.equals(one)).toList());
      RateFit.Term trip = new RateFit.Term(one.hours(), one.days(), one.cover());
      double chance =
          RateFit.of(without, DRAWS).losses(one.style(), List.of(trip)).above(one.lostPieces() - 1);
      if (chance < CHANCE) {
        row(season, history, one)
            .ifPresent(
                row ->
                    findings.add(
                        Code.LOSS_FAR_OUT,
                        row.origin().under("Lost"),
                        Integer.toString(one.lostPieces()),
                        row.item().style(),
                        String.format(Locale.ROOT, "%.1f", one.hours())));
      }
    }
  }

  private static Optional<Loss> row(Season season, SeasonHistory history, Observation one) {
    Trip trip = history.trips().get(one.trip());
    String style = history.styles().get(one.style());
    return season.losses().stream()
        .filter(loss -> loss.trip().equals(trip.id()) && loss.item().style().equals(style))
        .max(Comparator.comparingInt(Loss::lostPieces));
  }
}
