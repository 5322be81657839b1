package sparewell.stock;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import sparewell.finding.Finding;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.units.Mass;

/**
 * Everything on hand.
 *
 * @param holdings one for each item and place, in the order of the workbook
 * @param findings recounts to ask for, losses that fit no item
 */
public record OnHand(List<Holding> holdings, List<ItemStock> items, List<Finding> findings) {
  public OnHand {
    holdings = List.copyOf(holdings);
    items = List.copyOf(items);
    findings = List.copyOf(findings);
  }

  /** An item over all places; {@code carryAtLeast} is its own floor in pieces, where it has one. */
  public record ItemStock(
      ItemId item,
      int aboard,
      int ashore,
      OptionalInt carryAtLeast,
      Optional<BigDecimal> packPrice,
      Optional<Mass> weightEach) {
    private ItemStock of(int nowAboard, int nowAshore) {
      return new ItemStock(item, nowAboard, nowAshore, carryAtLeast, packPrice, weightEach);
    }
  }

  /** Item stocks by style, in the order of the workbook; styles without any are not in it. */
  public Map<String, List<ItemStock>> itemsByStyle() {
    return items.stream()
        .collect(
            Collectors.groupingBy(
                item -> item.item().style(), LinkedHashMap::new, Collectors.toList()));
  }

  /**
   * Stock once a plan is carried out, one move after the other. What is put where the angler
   * chooses counts as aboard and has no holding.
   *
   * @param ashore whether a place is home storage
   * @throws IllegalArgumentException for a move of pieces that do not lie there
   */
  public OnHand after(List<PieceMove> moves, Predicate<Place> ashore) {
    Map<ItemId, Map<Place, Integer>> pieces = piecesByPlace();
    for (PieceMove move : moves) {
      Map<Place, Integer> own = pieces.get(move.item());
      move.from().ifPresent(from -> take(own, from, move));
      own.merge(move.to(), move.pieces(), Integer::sum);
    }
    List<Holding> after = new ArrayList<>();
    List<ItemStock> sums = new ArrayList<>();
    for (ItemStock item : items) {
      int aboard = 0;
      int home = 0;
      for (Map.Entry<Place, Integer> there : pieces.get(item.item()).entrySet()) {
        Place place = there.getKey();
        boolean chosen = place.equals(PieceMove.OF_CHOICE);
        boolean stored = !chosen && ashore.test(place);
        home += stored ? there.getValue() : 0;
        aboard += stored ? 0 : there.getValue();
        if (!chosen) {
          after.add(new Holding(item.item(), place, stored, there.getValue(), item.weightEach()));
        }
      }
      sums.add(item.of(aboard, home));
    }
    return new OnHand(after, sums, findings);
  }

  private static void take(Map<Place, Integer> own, Place from, PieceMove move) {
    int there = own.getOrDefault(from, 0);
    if (there < move.pieces()) {
      throw new IllegalArgumentException(move + ", but there are " + there);
    }
    own.put(from, there - move.pieces());
  }

  /** Pieces by item and place; {@link PieceMove#OF_CHOICE} has those without a holding. */
  public Map<ItemId, Map<Place, Integer>> piecesByPlace() {
    Map<ItemId, Map<Place, Integer>> pieces = new LinkedHashMap<>();
    for (ItemStock item : items) {
      pieces.put(item.item(), new LinkedHashMap<>(Map.of(PieceMove.OF_CHOICE, item.aboard())));
    }
    for (Holding holding : holdings) {
      Map<Place, Integer> own = pieces.get(holding.item());
      own.merge(holding.place(), holding.pieces(), Integer::sum);
      if (!holding.ashore()) {
        own.merge(PieceMove.OF_CHOICE, -holding.pieces(), Integer::sum);
      }
    }
    return pieces;
  }

  /** Pieces by item; those aboard without a holding lie where the angler chose to put them. */
  public Map<ItemId, ItemStock> itemsById() {
    Map<ItemId, ItemStock> map = new LinkedHashMap<>();
    items.forEach(item -> map.put(item.item(), item));
    return map;
  }
}
