package sparewell.rates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import sparewell.experience.Club;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.numerics.BetaBinomial;
import sparewell.numerics.CountDistribution;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.JointChance;
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
  private static final double FAR = 1e-4; // of losses that count as more than any stock

  private final SeasonHistory history;
  private final RateFit fit;
  private final Lean lean;
  private final ItemShares shares;
  private final JointChance<StyleStock> joint;
  private final Map<Share, CountDistribution> shared = new ConcurrentHashMap<>();
  private final List<StyleRate> styles;
  private final List<CoverEffect> covers;
  private final List<Finding> findings;
  private final Map<String, Integer> styleNumber = new LinkedHashMap<>();
  private StagedChance staged; // made when first asked for

  /** A share in a style's losses; items never lost have the same. */
  private record Share(int style, List<Among> demands) {}

  private LossModel(
      Season season, SeasonHistory history, RateFit fit, Lean lean, ItemShares shares) {
    this.lean = lean;
    this.history = history;
    this.fit = fit;
    this.shares = shares;
    this.joint = new JointChance<>(fit);
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
    Map<ItemId, List<Among>> byItem = new LinkedHashMap<>();
    for (Demand demand : demands(exposures)) {
      double all = demand.among().stream().mapToDouble(shares::weight).sum();
      for (ItemId item : demand.among()) {
        double own = shares.weight(item);
        // As a difference, so that items of equal weight get the very same rest.
        double rest = demand.among().size() == 1 ? 0 : all - own;
        byItem
            .computeIfAbsent(item, key -> new ArrayList<>())
            .add(new Among(demand.terms(), own, rest));
      }
    }
    Map<ItemId, CountDistribution> losses = new LinkedHashMap<>();
    byItem.forEach((item, demands) -> losses.put(item, losses(number, demands)));
    return losses;
  }

  /**
   * Loss distribution wanted of an item: terms, its weight, and that of the others among which it
   * stands.
   */
  private record Among(List<RateFit.Term> terms, double own, double rest) {}

  private CountDistribution losses(int style, List<Among> demands) {
    return shared.computeIfAbsent(new Share(style, demands), share -> fresh(style, demands));
  }

  private CountDistribution fresh(int style, List<Among> demands) {
    Among first = demands.get(0);
    if (demands.size() == 1) {
      CountDistribution whole = fit.losses(style, first.terms());
      if (whole.bundle() == 1 && whole.cut() <= BetaBinomial.MOST_THINNED) {
        return BetaBinomial.thin(whole, first.own(), first.rest());
      }
    }
    return fit.shared(
        style,
        demands.stream().map(Among::terms).toList(),
        first.own(),
        demands.stream().map(Among::rest).toList());
  }

  /**
   * {@inheritDoc}
   *
   * <p>Exact given the model where the exposures of a style name the same items or none in common;
   * where some overlap in part, told by 640 futures drawn from the fit.
   */
  @Override
  public double nothingRunsOut(List<StyleStock> stocks) {
    if (stocks.stream().anyMatch(stock -> Demand.overlap(demands(stock.exposures())))) {
      return staged().chances(stocks.stream().map(StagedStock::of).toList(), 1)[0];
    }
    if (stocks.size() == 1 && stocks.get(0).pieces().size() == 1) {
      return lasts(stocks.get(0));
    }
    Map<Integer, double[][]> all = new TreeMap<>();
    for (StyleStock stock : stocks) {
      int style = number(stock.style());
      all.put(style, joint.style(style, stock, () -> lasting(style, stock)));
    }
    return joint.all(all);
  }

  /** Chance that a stock of one item lasts. */
  private double lasts(StyleStock stock) {
    ItemId item = stock.pieces().keySet().iterator().next();
    return itemLosses(stock.style(), stock.exposures())
        .getOrDefault(item, CountDistribution.none())
        .atMost(stock.pieces().get(item));
  }

  /**
   * {@inheritDoc}
   *
   * <p>The first is exact; the others are told by 640 futures drawn from the fit, and scaled by
   * what these say of the first.
   */
  @Override
  public double[] lastsThroughout(List<StagedStock> stocks) {
    int stages = stocks.isEmpty() ? 0 : stocks.get(0).stages().size();
    if (stages == 0 || stocks.stream().anyMatch(stock -> stock.stages().size() != stages)) {
      throw new IllegalArgumentException("stocks of as many stages each, at least one");
    }
    double exact = nothingRunsOut(stocks.stream().map(StagedStock::first).toList());
    double[] chances = stages == 1 ? new double[] {exact} : staged().chances(stocks, stages);
    double scale = chances[0] > 0 ? exact / chances[0] : 1;
    for (int j = 0; j < chances.length; j++) {
      chances[j] = Math.min(exact, chances[j] * scale);
    }
    return chances;
  }

  private synchronized StagedChance staged() {
    if (staged == null) {
      staged = new StagedChance(futures(FUTURES), this::number, this::term, shares::weight);
    }
    return staged;
  }

  RateFutures futures(int count) {
    return new RateFutures(fit, count);
  }

  private List<JointChance.Lasting> lasting(int style, StyleStock stock) {
    List<JointChance.Lasting> lasting = new ArrayList<>();
    for (Demand demand : demands(stock.exposures())) {
      List<Double> weights = new ArrayList<>();
      List<Integer> limits = new ArrayList<>();
      double rest = 0;
      for (ItemId item : demand.among()) {
        if (stock.pieces().containsKey(item)) {
          weights.add(shares.weight(item));
          limits.add(stock.pieces().get(item));
        } else {
          rest += shares.weight(item);
        }
      }
      if (!weights.isEmpty()) {
        int most = fit.losses(style, demand.terms()).quantile(1 - FAR);
        lasting.add(JointChance.Lasting.of(demand.terms(), weights, limits, rest, most));
      }
    }
    return lasting;
  }

  private List<Demand> demands(List<Exposure> exposures) {
    Map<Set<ItemId>, List<RateFit.Term>> groups = new LinkedHashMap<>();
    for (Exposure exposure : exposures) {
      if (exposure.hours() > 0 && !exposure.among().isEmpty()) {
        groups
            .computeIfAbsent(new LinkedHashSet<>(exposure.among()), key -> new ArrayList<>())
            .add(term(exposure));
      }
    }
    return groups.entrySet().stream()
        .map(group -> new Demand(group.getKey(), group.getValue()))
        .toList();
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
