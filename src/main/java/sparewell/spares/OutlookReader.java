package sparewell.spares;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.ToIntFunction;
import sparewell.rates.LossForecast;
import sparewell.rates.LossForecast.StagedStock;
import sparewell.season.ItemId;

/** Asks the forecast for the chance that nothing important runs out. */
final class OutlookReader {
  private final Horizon horizon;
  private final LossForecast forecast;
  private final boolean anyFull;
  private final List<SparesRow> watched;
  private final Map<List<Integer>, Double> known = new HashMap<>();

  OutlookReader(Horizon horizon, LossForecast forecast, List<SparesRow> rows) {
    this.horizon = horizon;
    this.forecast = forecast;
    List<SparesRow> used = rows.stream().filter(SparesRow::used).toList();
    this.anyFull = used.stream().anyMatch(row -> row.importance() >= 1);
    this.watched =
        used.stream()
            .filter(row -> anyFull ? row.importance() >= 1 : row.importance() > 0)
            .toList();
  }

  Outlook read() {
    return new Outlook(
        watched.size(),
        anyFull,
        chance(SparesRow::aboard),
        chance(SparesRow::aboardAfterBringing),
        chance(row -> row.aboardAfterBringing() + row.buyPieces()));
  }

  /** The chance with that many pieces of each item; absent where nothing is watched. */
  OptionalDouble chance(ToIntFunction<SparesRow> pieces) {
    if (watched.isEmpty()) {
      return OptionalDouble.empty();
    }
    // Much of what a list buys is not watched, and then the answer stays the same.
    List<Integer> held = watched.stream().map(pieces::applyAsInt).toList();
    return OptionalDouble.of(known.computeIfAbsent(held, key -> nothingRunsOut(pieces)));
  }

  private double nothingRunsOut(ToIntFunction<SparesRow> pieces) {
    Map<String, Map<ItemId, Integer>> byStyle = new LinkedHashMap<>();
    for (SparesRow row : watched) {
      byStyle
          .computeIfAbsent(row.item().style(), style -> new LinkedHashMap<>())
          .put(row.item(), pieces.applyAsInt(row));
    }
    List<StagedStock> stocks = new ArrayList<>();
    byStyle.forEach(
        (style, items) -> stocks.add(StagedStock.of(style, horizon.use(style).stretches(), items)));
    return forecast.nothingRunsOut(stocks);
  }
}
