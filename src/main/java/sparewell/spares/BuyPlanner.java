package sparewell.spares;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
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
import sparewell.stock.Homes;

/**
 * Puts what is still short after bringing into an order to buy it in.
 *
 * <p>First the pack with the largest fall of importance-weighted expected shortage per unit of
 * money (marginal analysis: Fox 1966; Sherbrooke, Optimal Inventory Modeling of Systems, 2004, from
 * memory), last what only fills floors. Within a budget that order can miss the best choice of
 * whole packs, so the choice itself is made exactly.
 */
public final class BuyPlanner {
  /** The next money that the list answers for. */
  private static final BigDecimal MORE = BigDecimal.valueOf(20);

  private static final int CURVE_POINTS = 16;

  private final Season season;
  private final SparesReport spares;
  private final List<SparesRow> rows;
  private final Map<ItemId, Integer> positions = new HashMap<>();
  private final OutlookReader outlook;
  private final PackSource source;
  private final List<Pack> wanted;

  private BuyPlanner(Season season, SparesReport spares, LossForecast forecast) {
    this.season = season;
    this.spares = spares;
    this.rows = spares.rows();
    for (int i = 0; i < rows.size(); i++) {
      positions.put(rows.get(i).item(), i);
    }
    this.outlook = new OutlookReader(spares.horizon(), forecast, rows);
    this.source = new PackSource(rows, season.settings().budget());
    this.wanted = source.wanted();
  }

  /**
   * The buy list.
   *
   * <p>Worth of a pack: importance x (E(losses - held)+ - E(losses - held - pieces a pack)+),
   * pieces times importance; losses are those over the horizon of {@code spares}.
   *
   * @param forecast the one that {@code spares} rests on, for the chance that nothing runs out
   * @throws ArithmeticException for money beyond about 9 x 10<sup>14</sup>
   */
  public static BuyList plan(Season season, SparesReport spares, LossForecast forecast) {
    return new BuyPlanner(season, spares, forecast).plan();
  }

  private BuyList plan() {
    Optional<BigDecimal> budget = season.settings().budget();
    Basket basket =
        budget.map(money -> Basket.fill(wanted, source.units(money))).orElse(new Basket(wanted, 0));
    Homes homes = new Homes(season, spares.brought(), spares.horizon().emptied(season));
    List<BuyList.Line> lines =
        new BuyLines(rows, source, budget.isPresent(), homes)
            .of(wanted, new HashSet<>(basket.packs()));
    return new BuyList(
        budget,
        season.settings().currency(),
        lines,
        source.money(Basket.cost(basket.packs())),
        source.money(Basket.cost(wanted)),
        point(List.of()),
        boughtPoint(basket.packs().stream().filter(pack -> !pack.fills()).toList(), lines, false),
        boughtPoint(basket.packs(), lines, true),
        curve(),
        more(basket),
        basket.gapPieces(),
        spares
            .brought()
            .after(
                lines.stream().filter(BuyList.Line::bought).map(BuyList.Line::move).toList(),
                season::ashore),
        findings());
  }

  /**
   * Outcomes as far as money lowers the expected shortage: with floors behind it would be mostly
   * flat.
   */
  private List<BuyList.Point> curve() {
    List<BuyList.Point> points = new ArrayList<>();
    List<Pack> needed = wanted.stream().filter(pack -> !pack.fills()).toList();
    int last = needed.size();
    int steps = Math.min(last, CURVE_POINTS - 1);
    for (int step = 0; step <= steps; step++) {
      int packs = steps == 0 ? 0 : (int) Math.round((double) step * last / steps);
      points.add(point(needed.subList(0, packs)));
    }
    return points;
  }

  /** Outcome of packs bought, together with what is bought though its price is not known. */
  private BuyList.Point boughtPoint(List<Pack> packs, List<BuyList.Line> lines, boolean fills) {
    int[] bought = count(packs);
    for (BuyList.Line line : lines) {
      if (line.bought() && line.cost().isEmpty() && (fills || !line.fills())) {
        bought[positions.get(line.item())] += line.packs();
      }
    }
    return point(packs, bought);
  }

  private BuyList.Point point(List<Pack> packs) {
    return point(packs, count(packs));
  }

  private BuyList.Point point(List<Pack> packs, int[] bought) {
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
    packs.forEach(pack -> bought[pack.row()] += rows.get(pack.row()).packsInLot());
    return bought;
  }

  /**
   * Purchases of the next money after what is in hand: without a budget nothing is, so it is the
   * first of the list. Where the list is paid it goes beyond it, unless as much is left anyway.
   */
  private Optional<BuyList.More> more(Basket basket) {
    long extra = source.units(MORE);
    boolean first = season.settings().budget().isEmpty() && !wanted.isEmpty();
    List<Pack> held = first ? List.of() : basket.packs();
    long money = season.settings().budget().map(source::units).orElse(0L) + extra;
    List<Pack> chosen;
    if (held.size() < wanted.size()) {
      chosen = Basket.fill(wanted, money).packs();
    } else {
      long left = money - (season.settings().budget().isEmpty() ? 0 : Basket.cost(held));
      if (left >= 2 * extra) {
        return Optional.empty();
      }
      chosen = new ArrayList<>(wanted);
      chosen.addAll(PackKnapsack.choose(source.beyond(left), left).packs());
    }
    List<BuyList.More.Change> changes = changes(count(held), count(chosen));
    return changes.isEmpty()
        ? Optional.empty()
        : Optional.of(new BuyList.More(MORE, first, changes, point(held), point(chosen)));
  }

  private List<BuyList.More.Change> changes(int[] before, int[] after) {
    List<BuyList.More.Change> changes = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      int packs = after[i] - before[i];
      if (packs != 0) {
        changes.add(
            new BuyList.More.Change(
                rows.get(i).item(), packs, packs * rows.get(i).piecesPerPack()));
      }
    }
    return changes;
  }

  private List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    Set<String> told = new HashSet<>();
    for (SparesRow row : rows) {
      String style = row.item().style();
      if (row.buyPacks() > 0 && row.packPrice().isEmpty() && told.add(style)) {
        findings.add(
            Finding.of(
                Code.PRICE_NOT_KNOWN,
                season.stylesByName().get(style).origin().under("Pack price"),
                style));
      }
    }
    return findings;
  }
}
