package sparewell.sheet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sparewell.season.Event;
import sparewell.season.Season;
import sparewell.stock.Holding;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Entry;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/**
 * One page to take along on the next trip, and the cells to type its marks into afterwards. Posting
 * turns them into a trip with its hours and losses.
 */
public final class TripCardSheet {
  public static final String NAME = "Trip card";

  private static final Columns<Holding> ITEMS = Columns.of("Trip card: items");
  private static final Columns<CardRows.StyleRow> STYLES = Columns.of("Trip card: styles");

  public static final String EVENT = "Event";
  public static final String TRIP = "Trip";
  public static final String DATE = "Date";
  public static final String DAYS = "Days";
  public static final String HOURS = "Hours fished";
  public static final String COVER = "Cover, mostly";
  public static final String NOTE = "Notes";

  public static final List<String> FIELDS = List.of(EVENT, TRIP, DATE, DAYS, HOURS, COVER, NOTE);

  static final String THROWN = "Hours";
  public static final String LOST = "Lost";
  public static final String RAN_OUT = "Ran out";

  private static final int MOST_HOURS = 2_000;
  private static final int MOST_LOST = 999;
  private static final int MOST_SQUARES = 10;
  private static final double LEAST_ROW_POINTS = 15;
  private static final double MOST_ROW_POINTS = 22;

  /** Rows of least height that a page holds. */
  private static final int FULL_PAGE = 32;

  private static final String LINE = " " + "_".repeat(28);

  /** A space that is no end of a line. */
  private static final String APART = "\u00a0";

  private final Results results;
  private final Typed typed;
  private final Optional<Event> event;
  private final CardRows rows;

  /** True once the event has begun: what was packed for it is not known any more, so no counts. */
  private final boolean behind;

  /** True if the fields stay as they are: once the event has begun the angler writes in them. */
  private final boolean kept;

  private TripCardSheet(Results results) {
    this.results = results;
    this.typed = results.typed();
    this.event = CardEvent.of(results);
    this.rows = new CardRows(results, typed, event);
    LocalDate asOf = results.season().settings().asOf();
    this.behind = event.filter(one -> one.date().isBefore(asOf)).isPresent();
    boolean begun = event.filter(one -> !one.date().isAfter(asOf)).isPresent();
    this.kept =
        filled(typed)
            || CardEvent.ownName(typed.card(), results.season())
            || stays() && (begun || event.isEmpty());
  }

  /** True if the card that lies there is for the same event; one for any trip has no date. */
  private boolean stays() {
    return event.isPresent()
        ? event(typed, results.season()).equals(event)
        : !typed.card().containsKey(DATE);
  }

  /** Returns whether the card tells of a trip: hours, a note, losses or styles thrown. */
  public static boolean filled(Typed typed) {
    return typed.card().containsKey(HOURS)
        || typed.card().containsKey(NOTE)
        || typed.rows().stream().anyMatch(row -> row.table().sheet().equals(NAME) && row.ticked());
  }

  public static Optional<Event> event(Typed typed, Season season) {
    return CardEvent.named(typed.card(), season);
  }

  static ReportSheet of(Results results) {
    return new TripCardSheet(results).sheet();
  }

  private ReportSheet sheet() {
    String trip = event.map(one -> one.name() + ", " + one.date()).orElse("the next trip you make");
    List<Block> blocks = new ArrayList<>();
    String gone =
        "At home, with the page beside you: type what you crossed out, then the trip below.";
    String ahead = "Afloat: cross out a square for each piece lost and each hour thrown.";
    blocks.add(new Lines().plain(behind ? gone : ahead).block());
    blocks.add(new Block.Rows(items()));
    blocks.add(new Block.Rows(styles()));
    blocks.add(
        new Lines().plain(HOURS + LINE + "  Cover" + LINE).plain(NOTE + LINE + LINE).block());
    blocks.add(new Block.EndOfPrint());
    blocks.add(
        new Lines()
            .heading("The trip")
            .plain(
                "At home: type the sums into the framed cells above, fill in these, and post. What"
                    + " you typed waits here until then; an empty card waits %d days.",
                CardEvent.DAYS_TO_WAIT)
            .block());
    blocks.add(new Block.Form(fields()));
    String title = behind ? "Type in and post " + trip : "Take this page along on " + trip;
    return new ReportSheet(NAME, title, blocks, true);
  }

  /** The event's box first, then the others; a page printed before keeps its order. */
  private Table<Holding> items() {
    if (printed()) {
      return items("Lost, in the order of the page you took along", rows.asPrinted());
    }
    String box = event.map(Event::box).orElse("");
    List<Holding> items = rows.items();
    boolean packed = items.stream().anyMatch(row -> row.place().box().equals(box));
    return items(
        packed && !box.isEmpty()
            ? "Lost: first out of " + box + ", then out of the other boxes"
            : "Lost out of the boat's boxes",
        items);
  }

  private boolean printed() {
    return behind && stays() && !typed.carded().isEmpty();
  }

  private List<Block.Field> fields() {
    List<Block.Field> fields = new ArrayList<>();
    Optional<String> name = event.map(Event::name);
    if (name.isPresent()) {
      Entry events =
          Entry.anything(
              "The event that the card is for.",
              results.season().events().stream().map(Event::name).toArray(String[]::new));
      fields.add(new Block.Field(EVENT, events, Optional.of(name.get())));
    }
    fields.add(field(TRIP, Entry.anything("What you call the trip."), name));
    fields.add(field(DATE, Entry.date("Its first day."), event.map(Event::date)));
    fields.add(
        field(
            DAYS,
            Entry.number(0, 366, "Days it took; blank is one."),
            event.map(Event::days).filter(days -> days != 1)));
    fields.add(
        field(
            HOURS,
            Entry.number(0, MOST_HOURS, "Hours fished over all its days."),
            Optional.empty()));
    fields.add(field(COVER, cover(), event.flatMap(Event::cover)));
    fields.add(field(NOTE, Entry.anything("Anything worth keeping."), Optional.empty()));
    return fields;
  }

  private Entry cover() {
    return Entry.anything(
        "The cover you fished mostly; blank is the usual mix.",
        Stream.concat(
                results.season().trips().stream().flatMap(trip -> trip.cover().stream()),
                results.season().events().stream().flatMap(one -> one.cover().stream()))
            .distinct()
            .sorted()
            .toArray(String[]::new));
  }

  private Block.Field field(String label, Entry entry, Optional<?> usual) {
    Object there = kept ? typed.card().get(label) : null;
    return new Block.Field(label, entry, Optional.ofNullable(there).or(() -> usual));
  }

  /** Few rows are higher: there is room on the page, and fingers are wet. */
  private Entry high(Entry entry) {
    int items = printed() ? typed.carded().size() : rows.items().size();
    double points = LEAST_ROW_POINTS * FULL_PAGE / Math.max(1, items + rows.styles().size());
    return entry.roomy(0, Math.max(LEAST_ROW_POINTS, Math.min(MOST_ROW_POINTS, points)));
  }

  private Table<Holding> items(String title, List<Holding> rows) {
    return ITEMS.table(
        rows,
        Columns.among(
            List.of(),
            Holding::item,
            ITEMS.column("One for each", row -> squares(row.pieces()), !behind),
            Column.entry(
                LOST,
                "Pieces lost.",
                high(Entry.whole(0, MOST_LOST, "Pieces lost; blank is none."))),
            Column.entry(
                RAN_OUT,
                "Whether you had none left before the day was over.",
                Entry.anything("yes where you had none left and wanted more.", "yes"))),
        title);
  }

  /** A square for each piece, in fives, apart so that a blunt pencil crosses out one. */
  private static String squares(int pieces) {
    StringBuilder squares = new StringBuilder();
    for (int i = 0; i < Math.min(pieces, MOST_SQUARES); i++) {
      squares.append(i == 0 ? "" : i % 5 == 0 ? APART.repeat(2) : APART).append('□');
    }
    return squares + (pieces > MOST_SQUARES ? APART + "+" : "");
  }

  private Table<CardRows.StyleRow> styles() {
    return STYLES.table(
        rows.styles(),
        List.of(
            STYLES.column("Style", CardRows.StyleRow::style),
            STYLES.column("Planned", CardRows.StyleRow::plannedHours),
            Column.entry(
                THROWN,
                "Hours thrown.",
                high(Entry.number(0, MOST_HOURS, "Hours thrown; blank is not at all."))),
            STYLES.column(
                "One an hour",
                row ->
                    squares(
                        Math.max(MOST_SQUARES, (int) Math.ceil(row.plannedHours().orElse(0.0)))),
                !behind)));
  }
}
