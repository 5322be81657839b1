package sparewell.spares;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import sparewell.season.Place;
import sparewell.stock.Holding;

/** Turns pieces to bring into moves from place to place. */
final class BringPlanner {
  private BringPlanner() {}

  /** The moves, the largest fall of expected shortage first, then in the order of the workbook. */
  static List<Bring> of(List<SparesRow> rows, List<Holding> holdings) {
    List<Bring> moves = new ArrayList<>();
    for (SparesRow row : rows) {
      int left = row.bringAboard();
      if (left == 0) {
        continue;
      }
      Optional<Place> to = destination(row, holdings);
      List<Holding> sources =
          holdings.stream()
              .filter(holding -> holding.ashore() && holding.item().equals(row.item()))
              .sorted(Comparator.comparingInt(Holding::pieces).reversed())
              .toList();
      for (Holding source : sources) {
        int pieces = Math.min(left, source.pieces());
        if (pieces > 0) {
          moves.add(
              new Bring(row.item(), pieces, source.place(), to, row.shortageSavedByBringing()));
          left -= pieces;
        }
      }
    }
    moves.sort(Comparator.comparingDouble(Bring::shortageSavedPieces).reversed());
    return moves;
  }

  private static Optional<Place> destination(SparesRow row, List<Holding> holdings) {
    return fullest(holdings, holding -> holding.item().equals(row.item()))
        .or(() -> fullest(holdings, holding -> holding.item().style().equals(row.item().style())));
  }

  /** The place aboard with most pieces of what is asked; a place listed with none counts too. */
  private static Optional<Place> fullest(List<Holding> holdings, Predicate<Holding> asked) {
    Map<Place, Integer> pieces = new LinkedHashMap<>();
    for (Holding holding : holdings) {
      if (!holding.ashore() && asked.test(holding)) {
        pieces.merge(holding.place(), holding.pieces(), Integer::sum);
      }
    }
    Optional<Place> best = Optional.empty();
    for (Map.Entry<Place, Integer> entry : pieces.entrySet()) {
      if (best.isEmpty() || entry.getValue() > pieces.get(best.get())) {
        best = Optional.of(entry.getKey());
      }
    }
    return best;
  }
}
