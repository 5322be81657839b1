package sparewell.workbook.read;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.finding.Code;
import sparewell.season.Style;
import sparewell.units.Mass;
import sparewell.workbook.InputSheets;
import sparewell.workbook.value.Amounts;

/** Reads the styles, and counts that are in the counting unit of a style. */
final class StylesReader {
  private final Book book;
  final Keys keys = new Keys("the sheet Styles");
  final Map<String, Style> styles = new LinkedHashMap<>();
  private final Lookalikes families;

  StylesReader(Book book) {
    this.book = book;
    this.families = new Lookalikes("kept as a family of its own");
    book.each(InputSheets.STYLES, this::style);
  }

  private void style(Row row) {
    Optional<String> name = book.name(row, "Style");
    Optional<String> family = book.name(row, "Family");
    Optional<Mass> weight = row.mass("Weight each");
    boolean packs = row.choice("Counted in").filter("packs"::equals).isPresent();
    Optional<Integer> perPack = row.some("Pieces per pack", Amounts::pieces);
    Optional<BigDecimal> price = row.read("Pack price", Amounts::money);
    Optional<Integer> carry = carryAtLeast(row, packs, perPack.orElse(1));
    Optional<Integer> atOnce = row.read("Needed at once", Amounts::pieces);
    Optional<Double> spareFactor = row.some("Spare factor", Amounts::number);
    Optional<Double> importance = row.read("Importance", Amounts::number);
    Optional<Double> chance = row.read("Chance wanted", Amounts::chance);
    if (!PlacesReader.defined(row, "Style", name, keys)) {
      return;
    }
    families.meet(row, "Family", family.orElseThrow());
    if (packs && row.isBlank("Pieces per pack")) {
      row.say("Pieces per pack", Code.BLANK_PACK_SIZE, name.orElseThrow());
    }
    styles.put(
        name.orElseThrow(),
        new Style(
            name.orElseThrow(),
            family.orElseThrow(),
            weight,
            packs,
            perPack.orElse(1),
            price,
            carry.map(OptionalInt::of).orElse(OptionalInt.empty()),
            atOnce.orElse(0),
            spareFactor.orElse(1.0),
            importance.orElse(1.0),
            chance.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
            row.origin()));
  }

  private static Optional<Integer> carryAtLeast(Row row, boolean packs, int perPack) {
    return packs
        ? row.read("Carry at least", (c, r) -> Amounts.packs(c, perPack, true, r))
        : row.read("Carry at least", Amounts::pieces);
  }

  /** A floor in the style's counting unit, as pieces; any number where the style is not known. */
  Optional<Integer> carryAtLeast(Row row, Optional<String> style) {
    Optional<Style> known = style.map(styles::get);
    return carryAtLeast(
        row,
        known.map(Style::countedInPacks).orElse(true),
        known.map(Style::piecesPerPack).orElse(1));
  }

  /** A count in the style's counting unit, as pieces; any number where the style is not known. */
  Optional<Integer> count(Row row, Optional<String> style) {
    Optional<Style> known = style.map(styles::get);
    if (known.isPresent() && !known.get().countedInPacks()) {
      return row.read("Count", Amounts::pieces);
    }
    int perPack = known.map(Style::piecesPerPack).orElse(1);
    return row.read("Count", (c, r) -> Amounts.packs(c, perPack, false, r));
  }
}
