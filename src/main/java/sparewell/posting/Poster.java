package sparewell.posting;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.sheet.EntryTable;
import sparewell.sheet.Ticks;
import sparewell.sheet.Typed;
import sparewell.stock.OnHand;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;

/** Turns what was typed on our sheets into rows of the angler's. */
public final class Poster {
  private static final MathContext DIGITS = new MathContext(10);

  private final Season season;
  private final LocalDate date;
  private final PlaceNames places;
  private final SameDayCounts counts;
  private final List<PostedRow> rows = new ArrayList<>();
  private final List<String> faults = new ArrayList<>();

  private Poster(Season season, OnHand onHand, LocalDate date) {
    this.season = season;
    this.date = date;
    this.places = new PlaceNames(season);
    this.counts = new SameDayCounts(season, onHand, date);
  }

  /**
   * The rows.
   *
   * @param typed what was typed
   * @param season the angler's records before
   * @param onHand what is on hand before
   * @param date date of the rows, but for those of a trip, which have the trip's own
   */
  public static Posting of(Typed typed, Season season, OnHand onHand, LocalDate date) {
    Poster poster = new Poster(season, onHand, date);
    typed.rows().stream().filter(Typed.Row::ticked).forEach(poster::post);
    poster.countAnew();
    PostedTrip trip = new PostedTrip(typed, season, date);
    poster.rows.addAll(trip.rows());
    poster.faults.addAll(trip.faults());
    return new Posting(poster.rows, poster.faults);
  }

  private void post(Typed.Row row) {
    switch (row.table()) {
      case BRING -> carried(row, row.shown().get("From"));
      case PACK -> packed(row);
      case BUY -> bought(row);
      case MOVE -> moved(row);
      case CHECK -> checked(row);
      case COUNT -> counted(row);
      case CARD_ITEMS, CARD_STYLES -> {} // rows of the trip
    }
  }

  private void carried(Typed.Row row, Object fromShown) {
    OptionalInt pieces = done(row);
    Optional<String> from = place(row, fromShown, "it is not known where they lay");
    Optional<String> to = into(row);
    if (pieces.isPresent() && pieces.getAsInt() > 0 && from.isPresent() && to.isPresent()) {
      Map<String, String> values = item(row);
      values.put("Count", inUnit(row, pieces.getAsInt()));
      values.put("From box", from.get());
      values.put("To box", to.get());
      add(InputSheets.TRANSFERS, values, row.at());
      counts.change(itemOf(row), from.get(), -pieces.getAsInt(), row.at());
      counts.change(itemOf(row), to.get(), pieces.getAsInt(), row.at());
    }
  }

  /** What stays where it is has nothing under {@link EntryTable#INTO}: done, but nothing moved. */
  private void packed(Typed.Row row) {
    if (row.shown().containsKey(EntryTable.INTO)) {
      carried(row, row.shown().getOrDefault("From box", row.shown().get("From compartment")));
    }
  }

  private void bought(Typed.Row row) {
    OptionalInt packs = done(row);
    Optional<String> to = into(row);
    if (packs.isEmpty() || packs.getAsInt() == 0 || to.isEmpty()) {
      return;
    }
    int asked = number(row.shown().get("Packs")).orElse(packs.getAsInt());
    int pieces = number(row.shown().get("Pieces")).orElse(asked) / asked * packs.getAsInt();
    Map<String, String> values = item(row);
    values.put("Box", to.get());
    values.put("Count", inUnit(row, pieces));
    if (row.shown().get("Cost") instanceof Double cost) {
      values.put(
          "Cost",
          BigDecimal.valueOf(cost)
              .multiply(BigDecimal.valueOf(packs.getAsInt()))
              .divide(BigDecimal.valueOf(asked), 2, RoundingMode.HALF_EVEN)
              .toPlainString());
    }
    add(InputSheets.RESTOCKS, values, row.at());
    counts.change(itemOf(row), to.get(), pieces, row.at());
  }

  private void moved(Typed.Row row) {
    Optional<String> to = place(row, row.shown().get("To"), "there is no compartment");
    if (yes(row) && to.isPresent()) {
      Map<String, String> values = new LinkedHashMap<>();
      values.put("Box", text(row, "Box"));
      values.put("Compartment", to.get());
      add(InputSheets.BOX_LOG, values, row.at());
    }
  }

  private void checked(Typed.Row row) {
    if (yes(row)) {
      Map<String, String> values = new LinkedHashMap<>();
      values.put("Box", text(row, "Box"));
      values.put("Checked", "yes");
      add(InputSheets.BOX_LOG, values, row.at());
    }
  }

  private void counted(Typed.Row row) {
    Object entry = row.entries().values().iterator().next();
    OptionalInt pieces = number(entry);
    if (pieces.isEmpty()) {
      fault(row, "'" + Ticks.plain(entry) + "' is no whole number of pieces");
      return;
    }
    Object where = row.shown().getOrDefault("Box", row.shown().get("Compartment"));
    Optional<String> place = place(row, where, "its box is not known");
    if (place.isPresent()) {
      Map<String, String> values = item(row);
      values.put("Box", place.get());
      values.put("Count", inUnit(row, pieces.getAsInt()));
      add(InputSheets.COUNTS, values, row.at());
      counts.counted(itemOf(row), place.get());
    }
  }

  /** Where a row of the ledgers would not count, its outcome is counted. */
  private void countAnew() {
    for (SameDayCounts.Count count : counts.all()) {
      Map<String, String> values = item(count.item());
      values.put("Box", count.place());
      values.put("Count", inUnit(count.item().style(), count.pieces()));
      values.put("Note", "as it is after what was posted");
      add(InputSheets.COUNTS, values, count.from());
    }
  }

  /** How many of those asked for were done; empty, with a fault, where that cannot be told. */
  private OptionalInt done(Typed.Row row) {
    Object entry = row.entries().get(EntryTable.DONE);
    int asked = number(row.shown().get(row.table().count().orElseThrow())).orElse(0);
    if (Ticks.isYes(entry)) {
      return OptionalInt.of(asked);
    }
    OptionalInt done = number(entry);
    if (done.isEmpty()) {
      fault(row, "'" + Ticks.plain(entry) + "' is neither yes nor a whole number");
    } else if (done.getAsInt() > asked) {
      fault(
          row,
          Ticks.plain(entry)
              + " is more than the "
              + asked
              + " asked for; type yes, and log what is more yourself");
      return OptionalInt.empty();
    }
    return done;
  }

  private boolean yes(Typed.Row row) {
    Object entry = row.entries().get(EntryTable.DONE);
    if (!Ticks.isYes(entry)) {
      fault(row, "'" + Ticks.plain(entry) + "' is not yes");
      return false;
    }
    return true;
  }

  private Optional<String> into(Typed.Row row) {
    return place(
        row,
        row.shown().get(EntryTable.INTO),
        "name the box or compartment they went into, under " + EntryTable.INTO);
  }

  private Optional<String> place(Typed.Row row, Object shown, String otherwise) {
    Optional<String> known = Optional.ofNullable(shown).map(Ticks::plain).flatMap(places::find);
    if (known.isEmpty()) {
      fault(
          row,
          shown == null
              ? otherwise
              : "'" + Ticks.plain(shown) + "' is no box or compartment of yours; " + otherwise);
    }
    return known;
  }

  private void fault(Typed.Row row, String what) {
    faults.add(fault(row.at(), row.words(), what));
  }

  static String fault(Cell at, String about, String what) {
    return at.sheet() + " " + at.reference() + " (" + about + "): " + what + ".";
  }

  private static ItemId itemOf(Typed.Row row) {
    return new ItemId(text(row, "Style"), text(row, "Size"), text(row, "Colour"));
  }

  private static String text(Typed.Row row, String heading) {
    return Optional.ofNullable(row.shown().get(heading)).map(Ticks::plain).orElse("");
  }

  private static Map<String, String> item(Typed.Row row) {
    return item(itemOf(row));
  }

  static Map<String, String> item(ItemId item) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("Style", item.style());
    values.put("Size", item.size());
    values.put("Colour", item.colour());
    return values;
  }

  private void add(InputSheet sheet, Map<String, String> values, Cell from) {
    values.put("Date", date.toString());
    rows.add(new PostedRow(sheet, values, from));
  }

  /** A whole number of at least 0. */
  static OptionalInt number(Object entry) {
    String text = entry == null ? "" : Ticks.plain(entry);
    return text.matches("\\d{1,6}") ? OptionalInt.of(Integer.parseInt(text)) : OptionalInt.empty();
  }

  private String inUnit(Typed.Row row, int pieces) {
    return inUnit(text(row, "Style"), pieces);
  }

  /** A count in what the style is counted in. */
  private String inUnit(String style, int pieces) {
    Style known = season.stylesByName().get(style);
    if (known == null || !known.countedInPacks() || known.piecesPerPack() == 1) {
      return String.valueOf(pieces);
    }
    return BigDecimal.valueOf(pieces)
        .divide(BigDecimal.valueOf(known.piecesPerPack()), DIGITS)
        .stripTrailingZeros()
        .toPlainString();
  }
}
