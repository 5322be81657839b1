package sparewell.check;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Box;
import sparewell.season.FixedLoad;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.season.Style;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.Spoken;

/** Rules for weights. Bounds are common practice, no source. */
final class WeightRules {
  private static final Mass HEAVIEST_PIECE = Mass.of(3, MassUnit.KILOGRAM);
  private static final Mass HEAVIEST_BOX = Mass.of(25, MassUnit.KILOGRAM);
  private static final Mass LIGHTEST_PERSON = Mass.of(15, MassUnit.KILOGRAM);
  private static final Mass HEAVIEST_PERSON = Mass.of(250, MassUnit.KILOGRAM);

  private WeightRules() {}

  /** Styles with pieces that have come aboard and have no weight. */
  static void known(Season season, Findings findings) {
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

  /** Weights that look like a mix-up of units. */
  static void plausible(Season season, Findings findings) {
    for (Style style : season.styles()) {
      piece(season, findings, style.origin(), style.name(), style.weightEach());
    }
    for (StockRow row : season.stock()) {
      piece(season, findings, row.origin(), row.item().spoken(), row.weightEach());
    }
    for (Box box : season.boxes()) {
      Cell at = box.origin().under("Empty weight");
      box.emptyWeight()
          .filter(weight -> weight.compareTo(HEAVIEST_BOX) > 0)
          .map(weight -> shown(season, weight))
          .ifPresent(weight -> findings.add(Code.BOX_WEIGHT_DOUBTFUL, at, box.name(), weight));
    }
    for (FixedLoad load : season.loads()) {
      Mass weight = load.weight();
      boolean person = load.kind() == FixedLoad.Kind.PERSON;
      if (person
          && (weight.compareTo(LIGHTEST_PERSON) < 0 || weight.compareTo(HEAVIEST_PERSON) > 0)) {
        Cell at = load.origin().under("Weight");
        findings.add(Code.PERSON_WEIGHT_DOUBTFUL, at, load.name(), shown(season, weight));
      }
    }
  }

  private static void piece(
      Season season, Findings findings, Cell row, String name, Optional<Mass> weight) {
    Cell at = row.under("Weight each");
    weight
        .filter(each -> each.compareTo(HEAVIEST_PIECE) > 0)
        .map(each -> shown(season, each))
        .ifPresent(each -> findings.add(Code.ITEM_WEIGHT_DOUBTFUL, at, name, each));
  }

  private static String shown(Season season, Mass weight) {
    return Spoken.mass(weight, season.settings().units());
  }
}
