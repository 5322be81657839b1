package sparewell.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import sparewell.season.ItemId;
import sparewell.season.Place;

/** Carries moves out on a stock. */
final class StockAfter {
  private StockAfter() {}

  static OnHand of(OnHand before, List<PieceMove> moves, Predicate<Place> ashore) {
    Map<ItemId, Map<Place, Integer>> pieces = before.piecesByPlace();
    for (PieceMove move : moves) {
      Map<Place, Integer> own = pieces.get(move.item());
      move.from().ifPresent(from -> take(own, from, move));
      own.merge(move.to(), move.pieces(), Integer::sum);
    }
    List<Holding> holdings = new ArrayList<>();
    List<OnHand.ItemStock> items = new ArrayList<>();
    for (OnHand.ItemStock item : before.items()) {
      int[] sum = new int[2];
      pieces
          .get(item.item())
          .forEach(
              (place, count) -> {
                boolean chosen = place.equals(PieceMove.OF_CHOICE);
                boolean home = !chosen && ashore.test(place);
                sum[home ? 1 : 0] += count;
                if (!chosen) {
                  holdings.add(new Holding(item.item(), place, home, count, item.weightEach()));
                }
              });
      items.add(
          new OnHand.ItemStock(
              item.item(),
              sum[0],
              sum[1],
              item.carryAtLeast(),
              item.packPrice(),
              item.weightEach()));
    }
    return new OnHand(holdings, items, before.findings());
  }

  private static void take(Map<Place, Integer> own, Place from, PieceMove move) {
    int there = own.getOrDefault(from, 0);
    if (there < move.pieces()) {
      throw new IllegalArgumentException(move + ", but there are " + there);
    }
    own.put(from, there - move.pieces());
  }
}
