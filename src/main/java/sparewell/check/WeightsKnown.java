package sparewell.check;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.Style;

/** Styles with pieces that have come aboard and have no weight. */
final class WeightsKnown implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    Map<String, Style> styles = season.stylesByName();
    Map<ItemId, Boolean> weighed = new HashMap<>();
    season
        .stock()
        .forEach(row -> weighed.merge(row.item(), row.weightEach().isPresent(), (a, b) -> a || b));
    Stream.of(
            season.stock().stream()
                .filter(row -> row.countedPieces() > 0)
                .map(row -> Map.entry(row.item(), row.place())),
            season.restocks().stream().map(row -> Map.entry(row.item(), row.place())),
            season.transfers().stream().map(row -> Map.entry(row.item(), row.to())),
            season.recounts().stream()
                .filter(row -> row.countedPieces() > 0)
                .map(row -> Map.entry(row.item(), row.place())))
        .flatMap(rows -> rows)
        .filter(row -> !weighed.getOrDefault(row.getKey(), false) && !season.ashore(row.getValue()))
        .map(row -> styles.get(row.getKey().style()))
        .filter(style -> style.weightEach().isEmpty())
        .distinct()
        .forEach(
            style ->
                findings.add(
                    Code.STYLE_WITHOUT_WEIGHT, style.origin().under("Weight each"), style.name()));
  }
}
