package sparewell.workbook.read;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import sparewell.finding.Code;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.StockRow;
import sparewell.units.Mass;
import sparewell.workbook.InputSheets;
import sparewell.workbook.value.Amounts;

/** Reads the stock, and knows which items there are. */
final class ItemsReader {
  private final Book book;
  private final StylesReader styles;
  private final PlacesReader places;
  final List<StockRow> stock;
  private final Map<String, Set<ItemId>> items = new LinkedHashMap<>();
  private final Set<List<String>> met = new HashSet<>();
  private final Map<String, Lookalikes> colours = new HashMap<>();

  ItemsReader(Book book, StylesReader styles, PlacesReader places) {
    this.book = book;
    this.styles = styles;
    this.places = places;
    this.stock = book.list(InputSheets.STOCK, this::stock);
  }

  Set<ItemId> of(String style) {
    return items.getOrDefault(style, Set.of());
  }

  /** The item that a row names, in the spelling first met; absent where its style is unknown. */
  Optional<ItemId> item(Row row) {
    Optional<String> style = row.key("Style", styles.keys);
    String size = row.size("Size").map(text -> book.shown("Size", text)).orElse("");
    String colour = book.name(row, "Colour").orElse("");
    return style.map(name -> new ItemId(name, size, colour));
  }

  /** The style that a row means, by the item it names or else by a name that is near. */
  Optional<String> style(Row row, Optional<ItemId> item) {
    return item.map(ItemId::style).or(() -> row.near("Style", styles.keys));
  }

  private Optional<StockRow> stock(Row row) {
    Optional<ItemId> item = item(row);
    Optional<String> style = item.map(ItemId::style);
    Optional<Place> place = places.place(row, "Box");
    Optional<Integer> count = styles.count(row, style);
    Optional<Mass> weight = row.mass("Weight each");
    Optional<BigDecimal> price = row.read("Pack price", Amounts::money);
    Optional<Integer> carry = styles.carryAtLeast(row, style);
    Optional<LocalDate> countedOn = row.date("Counted on");
    if (row.failed()) {
      return Optional.empty();
    }
    ItemId named = item.orElseThrow();
    items.computeIfAbsent(named.style(), s -> new LinkedHashSet<>()).add(named);
    colours
        .computeIfAbsent(named.style(), s -> new Lookalikes("kept as a colour of its own"))
        .meet(row, "Colour", named.colour());
    String where = place.orElseThrow().name();
    if (!met.add(List.of(named.style(), named.size(), named.colour(), where))) {
      row.say("Style", Code.SAME_PLACE_TWICE, named.spoken(), where);
    }
    LocalDate asOf = book.settings().asOf();
    countedOn
        .filter(date -> date.isAfter(asOf))
        .ifPresent(date -> row.say("Counted on", Code.COUNTED_IN_FUTURE, date, asOf));
    return Optional.of(
        new StockRow(
            named,
            place.orElseThrow(),
            count.orElseThrow(),
            weight,
            price,
            carry.map(OptionalInt::of).orElse(OptionalInt.empty()),
            countedOn.or(() -> book.settings().stockCountedOn()),
            row.origin()));
  }
}
