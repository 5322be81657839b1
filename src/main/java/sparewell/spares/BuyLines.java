package sparewell.spares;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The lines of a buy list: packs of one item that follow each other share a line. */
final class BuyLines {
  private final List<SparesRow> rows;
  private final PackSource source;
  private final boolean limited;

  /**
   * @param limited whether a budget is set
   */
  BuyLines(List<SparesRow> rows, PackSource source, boolean limited) {
    this.rows = rows;
    this.source = source;
    this.limited = limited;
  }

  /**
   * Lines of all packs, then of the items without a price.
   *
   * @param order the packs in the order to buy them
   * @param inside those that the budget pays for
   */
  List<BuyList.Line> of(List<Pack> order, Set<Pack> inside) {
    List<BuyList.Line> lines = lines(together(order, inside), inside);
    lines.addAll(unpriced(lines.size()));
    return lines;
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
              !limited));
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
}
