package sparewell.spares;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import sparewell.stock.Homes;

/** The lines of a buy list: packs of one item that follow each other share a line. */
final class BuyLines {
  private final List<SparesRow> rows;
  private final PackSource source;
  private final boolean limited;
  private final Homes homes;
  private final List<BuyList.Line> lines = new ArrayList<>();
  private long spent;

  BuyLines(List<SparesRow> rows, PackSource source, boolean limited, Homes homes) {
    this.rows = rows;
    this.source = source;
    this.limited = limited;
    this.homes = homes;
  }

  /**
   * Lines of what is needed, then of what only fills floors; in each part first what is bought,
   * then the priced rest, then the items without a price.
   *
   * @param order the packs in the order to buy them
   * @param inside those that the budget pays for
   */
  List<BuyList.Line> of(List<Pack> order, Set<Pack> inside) {
    for (boolean fills : List.of(false, true)) {
      List<Pack> part =
          order.stream()
              .filter(pack -> pack.fills() == fills)
              .sorted(Comparator.comparing(pack -> !inside.contains(pack)))
              .toList();
      priced(together(part, inside), inside);
      unpriced(fills);
    }
    return lines;
  }

  /**
   * The packs with those that only fill floors or save nothing put together by item: among them the
   * order has little meaning, and fewer lines read better.
   */
  private static List<Pack> together(List<Pack> order, Set<Pack> inside) {
    Map<List<Object>, List<Pack>> groups = new LinkedHashMap<>();
    for (Pack pack : order) {
      List<Object> group =
          pack.savedPieces() > 0 && !pack.fills()
              ? List.of(pack)
              : List.of(pack.row(), inside.contains(pack));
      groups.computeIfAbsent(group, key -> new ArrayList<>()).add(pack);
    }
    return groups.values().stream().flatMap(List::stream).toList();
  }

  private void priced(List<Pack> order, Set<Pack> inside) {
    for (int i = 0; i < order.size(); ) {
      Pack first = order.get(i);
      int packs = 0;
      long before = spent;
      while (i < order.size() && joins(first, order.get(i), inside)) {
        spent += first.costUnits();
        packs += rows.get(first.row()).packsInLot();
        i++;
      }
      add(
          first.row(),
          source.held(first),
          packs,
          first.fills(),
          Optional.of(source.money(spent - before)),
          Optional.of(source.money(spent)),
          inside.contains(first));
    }
  }

  private static boolean joins(Pack first, Pack next, Set<Pack> inside) {
    return first.row() == next.row() && inside.contains(first) == inside.contains(next);
  }

  /** Items without a price, largest fall of shortage first. */
  private void unpriced(boolean fills) {
    IntStream.range(0, rows.size())
        .filter(at -> rows.get(at).buyPacks() > 0 && rows.get(at).packPrice().isEmpty())
        .filter(at -> PackSource.fills(rows.get(at), rows.get(at).aboardAfterBringing()) == fills)
        .boxed()
        .sorted(Comparator.comparingDouble(at -> -shortage(rows.get(at))))
        .forEach(
            at -> {
              SparesRow row = rows.get(at);
              int held = row.aboardAfterBringing();
              Optional<BigDecimal> unknown = Optional.empty();
              add(at, held, row.buyPacks(), fills, unknown, unknown, !limited);
            });
  }

  private static double shortage(SparesRow row) {
    return row.importance() * row.losses().expectedShortage(row.aboardAfterBringing());
  }

  private void add(
      int at,
      int held,
      int packs,
      boolean fills,
      Optional<BigDecimal> cost,
      Optional<BigDecimal> cumulative,
      boolean bought) {
    SparesRow row = rows.get(at);
    int pieces = packs * row.piecesPerPack();
    lines.add(
        new BuyList.Line(
            lines.size() + 1,
            row.item(),
            fills,
            packs,
            pieces,
            cost,
            cumulative,
            row.losses().expectedShortage(held),
            row.losses().expectedShortage(held + pieces),
            bought,
            homes.of(row.item()),
            homes.open(row.item())));
  }
}
