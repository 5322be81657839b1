package sparewell.rates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import sparewell.experience.Club;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.numerics.CountDistribution;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.RateFit;
import sparewell.rates.fit.RateFutures;
import sparewell.rates.history.SeasonHistory;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Season;

/**
 * The loss model of a season: rates by style, effects of cover, and what will be lost. The rates
 * are those of {@link RateFit}; items share a style's losses as {@link ItemShares} has it. It
 * remembers what it was asked, and threads may share it: all weights of the rates are known once
 * its tables stand.
 */
public final class LossModel implements LossForecast {
  private static final int FUTURES = 640;

  private final SeasonHistory history;
  private final RateFit fit;
  private final Lean lean;
  private final ItemShares shares;
  private final Map<Share, CountDistribution> shared = new ConcurrentHashMap<>();
  private final List<StyleRate> styles;
  private final List<CoverEffect> covers;
  private final List<Finding> findings;
  private final Map<String, Integer> styleNumber = new LinkedHashMap<>();
  private StagedChance staged; // made when first asked for

  /**
   * An item's share in a style's losses; items never lost have the same.
   *
   * @param own its weight
   * @param byRest terms by the weight of the other items used then
   */
  private record Share(int style, double own, Map<Double, List<RateFit.Term>> byRest) {}

  private LossModel(
      Season season, SeasonHistory history, RateFit fit, Lean lean, ItemShares shares) {
    this.lean = lean;
    this.history = history;
    this.fit = fit;
    this.shares = shares;
    for (int s = 0; s < history.styles().size(); s++) {
      styleNumber.put(history.styles().get(s), s);
    }
    styles = RateTable.styles(history, fit, planned(season), lean.typical());
    covers = RateTable.covers(history, fit);
    Findings all = new Findings();
    all.addAll(history.findings());
    all.addAll(lean.findings());
    SlipFinder.find(season, history, fit.input(), all);
    if (!fit.converged()) {
      all.add(Code.RATES_NOT_SETTLED, Cell.NOWHERE);
    }
    for (Event event : season.eventsAhead()) {
      event
          .cover()
          .filter(cover -> !lean.covers().contains(cover) && !lean.covers().isEmpty())
          .ifPresent(
              cover ->
                  all.add(
                      Code.COVER_NEVER_LOGGED, event.origin().under("Cover"), cover, event.name()));
    }
    findings = all.list();
  }

  /** Styles that an event's plan has thrown. */
  private static Set<String> planned(Season season) {
    return season.events().stream()
        .flatMap(event -> event.plan().stream())
        .filter(line -> line.plannedHours() > 0)
        .map(Event.PlanLine::style)
        .collect(Collectors.toSet());
  }

  /** Fits the season's trips, weighted as of its date of analysis where a half-life is set. */
  public static LossModel fit(Season season) {
    return fit(season, Optional.empty());
  }

  /** Fits the same beside the experience of others. */
  public static LossModel fit(Season season, Optional<Others> others) {
    SeasonHistory history = SeasonHistory.of(season);
    FitInput input = history.input(season.settings().asOf(), season.settings().halfLifeMonths());
    Lean lean = Lean.on(others, season, history);
    return new LossModel(season, lean.history(), lean.fit(input), lean, ItemShares.of(season));
  }

  /** Other logs that the rates lean on; 0 where nobody else is known. */
  public long otherLogs() {
    return lean.club().map(Club::anglers).orElse(0L);
  }

  /** One line for each style, in the order of the workbook. */
  public List<StyleRate> styles() {
    return styles;
  }

  /** One line for each category of cover logged. */
  public List<CoverEffect> covers() {
    return covers;
  }

  /** Assumptions made, and cautions. */
  public List<Finding> findings() {
    return findings;
  }

  /** True if the fit settled; where not, a stated fallback stands in. */
  public boolean converged() {
    return fit.converged();
  }

  @Override
  public double meanShare(String style) {
    return history.usual().of(style);
  }

  @Override
  public boolean perHourAfloat() {
    return history.usual().perHourAfloat();
  }

  @Override
  public CountDistribution styleLosses(String style, List<Exposure> exposures) {
    return fit.losses(number(style), exposures.stream().map(this::term).toList());
  }

  @Override
  public Map<ItemId, CountDistribution> itemLosses(String style, List<Exposure> exposures) {
    int number = number(style);
    Map<ItemId, Map<Double, List<RateFit.Term>>> byItem = new LinkedHashMap<>();
    for (Exposure exposure : exposures) {
      double all = exposure.among().stream().mapToDouble(shares::weight).sum();
      for (ItemId item : exposure.used() ? exposure.among() : List.<ItemId>of()) {
        // As a difference, so that items of equal weight get the very same rest.
        double rest = exposure.among().size() == 1 ? 0 : all - shares.weight(item);
        byItem
            .computeIfAbsent(item, key -> new LinkedHashMap<>())
            .computeIfAbsent(rest, key -> new ArrayList<>())
            .add(term(exposure));
      }
    }
    Map<ItemId, CountDistribution> losses = new LinkedHashMap<>();
    byItem.forEach(
        (item, byRest) ->
            losses.put(
                item,
                shared.computeIfAbsent(
                    new Share(number, shares.weight(item), byRest), this::losses)));
    return losses;
  }

  private CountDistribution losses(Share share) {
    if (share.byRest().size() == 1) {
      var only = share.byRest().entrySet().iterator().next();
      CountDistribution whole = fit.losses(share.style(), only.getValue());
      if (whole.cut() <= CountDistribution.MOST_THINNED) {
        return whole.thinned(share.own(), only.getKey());
      }
    }
    return fit.shared(
        share.style(),
        List.copyOf(share.byRest().values()),
        share.own(),
        List.copyOf(share.byRest().keySet()));
  }

  /**
   * {@inheritDoc}
   *
   * <p>Told by 640 futures drawn from the fit, and of a single item at one stage exact.
   */
  @Override
  public double[] lastsThroughout(List<StagedStock> stocks) {
    int stages = stocks.isEmpty() ? 0 : stocks.get(0).stages().size();
    if (stages == 0 || stocks.stream().anyMatch(stock -> stock.stages().size() != stages)) {
      throw new IllegalArgumentException("stocks of as many stages each, at least one");
    }
    return staged().chances(stocks, stages);
  }

  private synchronized StagedChance staged() {
    if (staged == null) {
      staged =
          new StagedChance(
              futures(FUTURES), this::number, this::term, shares::weight, this::itemLosses);
    }
    return staged;
  }

  RateFutures futures(int count) {
    return new RateFutures(fit, count);
  }

  private int number(String style) {
    Integer number = styleNumber.get(style);
    if (number == null) {
      throw new IllegalArgumentException("unknown style: " + style);
    }
    return number;
  }

  private RateFit.Term term(Exposure exposure) {
    int cover =
        exposure
            .cover()
            .map(
                name -> {
                  int found = lean.covers().indexOf(name);
                  boolean known = found >= 0 && found < fit.input().covers();
                  return known ? found : Observation.NEVER_LOGGED;
                })
            .orElse(Observation.MIX);
    return new RateFit.Term(exposure.hours(), exposure.days(), cover, exposure.stepsAhead());
  }
}
