package sparewell.posting;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.posting.Posting.PostedRow;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Recount;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.sheet.EntryTable;
import sparewell.sheet.Ticks;
import sparewell.sheet.Typed;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;

/** Turns what was typed on our sheets into rows of the angler's. */
public final class Poster {
  private static final MathContext DIGITS = new MathContext(10);

  private final Season season;
  private final LocalDate date;
  private final Map<String, Place> places = new HashMap<>();
  private final LedgerProof proof;
  private final List<PostedRow> rows = new ArrayList<>();
  private final List<String> faults = new ArrayList<>();

  private Poster(Season season, Season withTrip, LocalDate date) {
    this.season = season;
    this.date = date;
    season.boxes().forEach(box -> name(new Place(box.name(), box.compartment())));
    season.compartments().forEach(place -> name(new Place("", place.name())));
    this.proof = new LedgerProof(withTrip, date);
  }

  /** The rows, of a date but for those of a trip, which have the trip's own. */
  public static Posting of(Typed typed, Season season, LocalDate date) {
    PostedTrip trip = new PostedTrip(typed, season, date);
    Poster poster = new Poster(season, trip.season, date);
    typed.rows().stream().filter(Typed.Row::ticked).forEach(poster::post);
    typed.strays().forEach(poster::stray);
    poster.countAnew();
    poster.rows.addAll(trip.rows);
    poster.faults.addAll(trip.faults);
    return new Posting(poster.rows, poster.faults);
  }

  private void name(Place place) {
    places.putIfAbsent(Ticks.fold(place.name()), place);
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
    Optional<Place> from = place(row, fromShown, "it is not known where they lay");
    Optional<Place> to = into(row);
    if (pieces.isPresent() && pieces.getAsInt() > 0 && from.isPresent() && to.isPresent()) {
      Place there = proof.lying(itemOf(row), from.get(), pieces.getAsInt());
      String count = inUnit(text(row, "Style"), pieces.getAsInt());
      add(
          InputSheets.TRANSFERS,
          row,
          Map.of("Count", count, "From box", there.name(), "To box", to.get().name()));
      proof.carried(itemOf(row), there, to.get(), pieces.getAsInt(), row.at());
    }
  }

  /**
   * Books a line of the packing list; one with nothing under {@link EntryTable#INTO} moves nothing.
   */
  private void packed(Typed.Row row) {
    if (row.shown().containsKey(EntryTable.INTO)) {
      carried(row, row.shown().getOrDefault("From box", row.shown().get("From compartment")));
    }
  }

  private void bought(Typed.Row row) {
    OptionalInt packs = done(row);
    Optional<Place> to = into(row);
    if (packs.isEmpty() || packs.getAsInt() == 0 || to.isEmpty()) {
      return;
    }
    int asked = asked(row).orElseThrow();
    OptionalInt ofAll = Ticks.whole(row.shown().get("Pieces"));
    if (ofAll.isEmpty()) {
      fault(row, "how many pieces that are cannot be read under Pieces");
      return;
    }
    int pieces = ofAll.getAsInt() / asked * packs.getAsInt();
    String cost = "";
    if (row.shown().get("Cost") instanceof Double all) {
      BigDecimal paid = BigDecimal.valueOf(all).multiply(BigDecimal.valueOf(packs.getAsInt()));
      cost = paid.divide(BigDecimal.valueOf(asked), 2, RoundingMode.HALF_EVEN).toPlainString();
    }
    add(
        InputSheets.RESTOCKS,
        row,
        Map.of("Box", to.get().name(), "Count", inUnit(text(row, "Style"), pieces), "Cost", cost));
    proof.bought(itemOf(row), to.get(), pieces, row.at());
  }

  /** A box that stays is done, but nothing moved: a row would hide later changes of its place. */
  private void moved(Typed.Row row) {
    boolean stays = Objects.equals(row.shown().get("From"), row.shown().get("To"));
    Optional<Place> to = place(row, row.shown().get("To"), "there is no compartment");
    if (yes(row) && to.isPresent() && !stays) {
      String box = text(row, "Box");
      add(InputSheets.BOX_LOG, row, Map.of("Box", box, "Compartment", to.get().name()));
      proof.moved(box, to.get(), row.at());
    }
  }

  private void checked(Typed.Row row) {
    if (yes(row)) {
      add(InputSheets.BOX_LOG, row, Map.of("Box", text(row, "Box"), "Checked", "yes"));
    }
  }

  private void counted(Typed.Row row) {
    Object entry = row.entries().values().iterator().next();
    OptionalInt pieces = Ticks.pieces(entry);
    if (pieces.isEmpty()) {
      fault(row, "'%s' is no whole number of pieces", Ticks.plain(entry));
      return;
    }
    Object where = row.shown().getOrDefault("Box", row.shown().get("Compartment"));
    Optional<Place> place = place(row, where, "its box is not known");
    if (place.isPresent()) {
      String count = inUnit(text(row, "Style"), pieces.getAsInt());
      add(InputSheets.COUNTS, row, Map.of("Box", place.get().name(), "Count", count));
      proof.counted(itemOf(row), place.get(), pieces.getAsInt(), row.at());
    }
  }

  /** Where the rows would not give the stock that was made, its outcome is counted. */
  private void countAnew() {
    for (Recount count : proof.missing()) {
      Map<String, String> values = item(count.item());
      values.put("Date", count.date().toString());
      values.put("Box", count.place().name());
      values.put("Count", inUnit(count.item().style(), count.countedPieces()));
      values.put("Note", "as it is after what was posted");
      rows.add(new PostedRow(InputSheets.COUNTS, values, count.origin()));
    }
  }

  /** How many of those asked for were done; empty, with a fault, where that cannot be told. */
  private OptionalInt done(Typed.Row row) {
    Object entry = row.entries().get(EntryTable.DONE);
    OptionalInt asked = asked(row);
    Optional<Ticks.Amount> done =
        Ticks.isYes(entry) && asked.isPresent()
            ? Optional.of(Ticks.Amount.of(asked.getAsInt()))
            : Ticks.amount(entry);
    String said = Ticks.plain(entry);
    int all = asked.orElse(0);
    if (all == 0) {
      fault(row, "how many were asked for cannot be read under %s", heading(row));
    } else if (done.isEmpty()) {
      fault(row, "'%s' is neither yes nor a whole number; type yes, or how many were done", said);
    } else if (done.get().of().orElse(all) != all || !counts(row, done.get())) {
      String unit = heading(row).toLowerCase(Locale.ROOT);
      fault(row, "'%s' does not fit the %d %s asked for", said, all, unit);
    } else if (done.get().count() > all) {
      fault(
          row,
          "%s is more than the %d asked for; type yes, and log what is more yourself",
          said,
          all);
    } else {
      return OptionalInt.of(done.get().count());
    }
    return OptionalInt.empty();
  }

  /** A pack of a style sold singly is a piece. */
  private static boolean counts(Typed.Row row, Ticks.Amount done) {
    boolean single = asked(row).equals(Ticks.whole(row.shown().get("Pieces")));
    return done.countsIn(heading(row)) || single && done.countsIn("Pieces");
  }

  private static String heading(Typed.Row row) {
    return row.table().count().orElseThrow();
  }

  private static OptionalInt asked(Typed.Row row) {
    return Ticks.whole(row.shown().get(heading(row)));
  }

  /** For a step that is done or not, 1 counts as yes and 0 as blank. */
  private boolean yes(Typed.Row row) {
    Object entry = row.entries().get(EntryTable.DONE);
    int count = Ticks.whole(entry).orElse(-1);
    if (count == 0) {
      return false;
    }
    if (count != 1 && !Ticks.isYes(entry)) {
      fault(row, "'%s' is not yes", Ticks.plain(entry));
      return false;
    }
    return true;
  }

  private void stray(Typed.Stray stray) {
    faults.add(
        "%s %s: '%s' stands in no line of the table; put it beside its line, or delete it."
            .formatted(stray.at().sheet(), stray.at().reference(), stray.typed()));
  }

  private Optional<Place> into(Typed.Row row) {
    return place(
        row,
        row.shown().get(EntryTable.INTO),
        "type the name of the box or compartment they went into in the same row, under Into, or"
            + " delete the tick");
  }

  private Optional<Place> place(Typed.Row row, Object shown, String otherwise) {
    Optional<Place> known =
        Optional.ofNullable(shown).map(Ticks::plain).map(name -> places.get(Ticks.fold(name)));
    if (known.isEmpty()) {
      boolean named = shown != null && !EntryTable.OF_CHOICE.equals(shown);
      String wrong = "'%s' is no box or compartment of yours; ";
      fault(row, "%s", (named ? wrong.formatted(Ticks.plain(shown)) : "") + otherwise);
    }
    return known;
  }

  private void fault(Typed.Row row, String what, Object... details) {
    faults.add(fault(row, what.formatted(details)));
  }

  static String fault(Typed.Row row, String what) {
    Cell at = row.at();
    return "%s %s (%s): %s.".formatted(at.sheet(), at.reference(), row.words(), what);
  }

  private static ItemId itemOf(Typed.Row row) {
    return new ItemId(text(row, "Style"), text(row, "Size"), text(row, "Colour"));
  }

  private static String text(Typed.Row row, String heading) {
    return Optional.ofNullable(row.shown().get(heading)).map(Ticks::plain).orElse("");
  }

  static Map<String, String> item(ItemId item) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("Style", item.style());
    values.put("Size", item.size());
    values.put("Colour", item.colour());
    return values;
  }

  /** Adds a row with its date and, where there is one, its item. */
  private void add(InputSheet sheet, Typed.Row row, Map<String, String> values) {
    Map<String, String> all = item(itemOf(row));
    all.put("Date", date.toString());
    all.putAll(values);
    rows.add(new PostedRow(sheet, all, row.at()));
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
