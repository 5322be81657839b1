package sparewell.spares;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.rates.LossForecast;
import sparewell.season.ItemId;
import sparewell.season.Season;

/**
 * Puts what is still short after bringing into an order to buy it in.
 *
 * <p>Floors first, then the pack with the largest fall of importance-weighted expected shortage per
 * unit of money (marginal analysis: Fox 1966; Sherbrooke, Optimal Inventory Modeling of Systems,
 * 2004, from memory). Within a budget that order can miss the best choice of whole packs, so the
 * choice itself is made exactly.
 */
public final class BuyPlanner {
  /** The further money that the list answers for. */
  private static final BigDecimal MORE = BigDecimal.valueOf(20);

  private static final int CURVE_POINTS = 16;

  private final Season season;
  private final List<SparesRow> rows;
  private final Map<ItemId, Integer> positions = new HashMap<>();
  private final OutlookReader outlook;
  private final PackSource source;
  private final List<Pack> wanted;

  private BuyPlanner(Season season, SparesReport spares, LossForecast forecast) {
    this.season = season;
    this.rows = spares.rows();
    for (int i = 0; i < rows.size(); i++) {
      positions.put(rows.get(i).item(), i);
    }
    this.outlook = new OutlookReader(spares.horizon(), forecast, rows);
    this.source = new PackSource(rows, season.settings().budget());
    this.wanted = source.wanted();
  }

  /** The buy list. */
  public static BuyList plan(Season season, SparesReport spares, LossForecast forecast) {
    return new BuyPlanner(season, spares, forecast).plan();
  }

  private BuyList plan() {
    Optional<BigDecimal> budget = season.settings().budget();
    Basket basket =
        budget.map(money -> Basket.fill(wanted, source.units(money))).orElse(new Basket(wanted, 0));
    List<Pack> order = new ArrayList<>(basket.packs());
    Set<Pack> inside = new HashSet<>(order);
    wanted.stream().filter(pack -> !inside.contains(pack)).forEach(order::add);
    List<BuyList.Line> lines = lines(together(order, inside), inside);
    lines.addAll(unpriced(lines.size()));
    return new BuyList(
        budget,
        season.settings().currency(),
        lines,
        source.money(Basket.cost(basket.packs())),
        source.money(Basket.cost(wanted)),
        point(basket.packs()),
        curve(),
        more(basket),
        basket.gapPieces(),
        findings());
  }

  /**
   * The packs with those that save nothing put together by item: among them the order has no
   * meaning, and fewer lines read better.
   */
  private static List<Pack> together(List<Pack> order, Set<Pack> inside) {
    Map<List<Object>, List<Pack>> groups = new LinkedHashMap<>();
    for (Pack pack : order) {
      List<Object> group =
          pack.savedPieces() > 0
              ? List.of(pack)
              : List.of(pack.row(), pack.forFloor(), inside.contains(pack));
      groups.computeIfAbsent(group, key -> new ArrayList<>()).add(pack);
    }
    return groups.values().stream().flatMap(List::stream).toList();
  }

  private List<BuyList.Line> lines(List<Pack> order, Set<Pack> inside) {
    List<BuyList.Line> lines = new ArrayList<>();
    long spent = 0;
    for (int i = 0; i < order.size(); ) {
      Pack first = order.get(i);
      int packs = 0;
      while (i < order.size() && joins(first, order.get(i), inside)) {
        spent += first.costUnits();
        packs++;
        i++;
      }
      lines.add(
          line(
              lines.size() + 1,
              first.row(),
              source.held(first),
              packs,
              first.forFloor(),
              Optional.of(source.money(packs * first.costUnits())),
              Optional.of(source.money(spent)),
              inside.contains(first)));
    }
    return lines;
  }

  private static boolean joins(Pack first, Pack next, Set<Pack> inside) {
    return first.row() == next.row()
        && first.forFloor() == next.forFloor()
        && inside.contains(first) == inside.contains(next);
  }

  /** Items without a price: listed after all others, largest fall of shortage first. */
  private List<BuyList.Line> unpriced(int ranked) {
    List<Integer> open = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).buyPacks() > 0 && rows.get(i).packPrice().isEmpty()) {
        open.add(i);
      }
    }
    open.sort(
        Comparator.comparingDouble(
            at ->
                -rows.get(at).importance()
                    * rows.get(at).losses().expectedShortage(rows.get(at).aboardAfterBringing())));
    List<BuyList.Line> lines = new ArrayList<>();
    for (int at : open) {
      SparesRow row = rows.get(at);
      lines.add(
          line(
              ranked + lines.size() + 1,
              at,
              row.aboardAfterBringing(),
              row.buyPacks(),
              row.aboardAfterBringing() < row.floor(),
              Optional.empty(),
              Optional.empty(),
              season.settings().budget().isEmpty()));
    }
    return lines;
  }

  private BuyList.Line line(
      int rank,
      int at,
      int held,
      int packs,
      boolean forFloor,
      Optional<BigDecimal> cost,
      Optional<BigDecimal> cumulative,
      boolean within) {
    SparesRow row = rows.get(at);
    int pieces = packs * row.piecesPerPack();
    return new BuyList.Line(
        rank,
        row.item(),
        forFloor,
        packs,
        pieces,
        cost,
        cumulative,
        row.losses().expectedShortage(held),
        row.losses().expectedShortage(held + pieces),
        within);
  }

  private List<BuyList.Point> curve() {
    List<BuyList.Point> points = new ArrayList<>();
    int last = wanted.size();
    int steps = Math.min(last, CURVE_POINTS - 1);
    for (int step = 0; step <= steps; step++) {
      int packs = steps == 0 ? 0 : (int) Math.round((double) step * last / steps);
      points.add(point(wanted.subList(0, packs)));
    }
    return points;
  }

  private BuyList.Point point(List<Pack> packs) {
    int[] bought = count(packs);
    double shortage = 0;
    for (int i = 0; i < rows.size(); i++) {
      shortage += rows.get(i).importance() * rows.get(i).losses().expectedShortage(held(i, bought));
    }
    OptionalDouble chance = outlook.chance(row -> held(positions.get(row.item()), bought));
    return new BuyList.Point(source.money(Basket.cost(packs)), shortage, chance);
  }

  private int held(int at, int[] bought) {
    return rows.get(at).aboardAfterBringing() + bought[at] * rows.get(at).piecesPerPack();
  }

  private int[] count(List<Pack> packs) {
    int[] bought = new int[rows.size()];
    packs.forEach(pack -> bought[pack.row()]++);
    return bought;
  }

  /** What further money buys: more of the list, and beyond it once the list is paid. */
  private Optional<BuyList.More> more(Basket basket) {
    long extra = source.units(MORE);
    List<Pack> chosen;
    if (basket.packs().size() < wanted.size()) {
      chosen =
          Basket.fill(wanted, source.units(season.settings().budget().orElseThrow()) + extra)
              .packs();
    } else {
      chosen = new ArrayList<>(wanted);
      chosen.addAll(PackKnapsack.choose(source.beyond(extra), extra).packs());
    }
    int[] before = count(basket.packs());
    int[] after = count(chosen);
    List<BuyList.More.Change> changes = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      if (after[i] != before[i]) {
        int packs = after[i] - before[i];
        changes.add(
            new BuyList.More.Change(
                rows.get(i).item(), packs, packs * rows.get(i).piecesPerPack()));
      }
    }
    return changes.isEmpty()
        ? Optional.empty()
        : Optional.of(new BuyList.More(MORE, changes, point(chosen)));
  }

  private List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    Set<String> told = new HashSet<>();
    for (SparesRow row : rows) {
      String style = row.item().style();
      if (row.buyPacks() > 0 && row.packPrice().isEmpty() && told.add(style)) {
        findings.add(
            Finding.of(Code.PRICE_NOT_KNOWN, season.stylesByName().get(style).origin(), style));
      }
    }
    return findings;
  }
}
