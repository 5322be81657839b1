package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.finding.Cell;
import sparewell.posting.Posting.PostedRow;
import sparewell.season.Season;
import sparewell.season.SeasonOrder;
import sparewell.sheet.EntryTable;
import sparewell.sheet.Typed;
import sparewell.stock.Holding;
import sparewell.stock.OnHandCalculator;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

/**
 * Any mixture of pieces brought, bought, packed and put back, box moves, checks, trips with losses
 * and counts, posted at once, one by one or in any groups, gives the stock of a ledger kept here: a
 * number for each item and place, changed by each tick as it is posted. Stock rows are counted long
 * ago, on the day of the posting, or on no known day.
 */
class MixedPostTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 15);
  private static final LocalDate LONG_AGO = LocalDate.of(2026, 1, 10);
  private static final int ITEMS = 14;

  /** One thing done and its pieces; the item is -1 for moves and checks of a box. */
  private record Deed(EntryTable table, int item, String from, String to, int asked, int done) {}

  private record Trip(String name, LocalDate day, Map<Integer, Integer> lost) {}

  private final Map<String, List<String>> sheets = new LinkedHashMap<>();
  private final Map<Integer, Map<String, Integer>> start = new TreeMap<>();
  private final Map<Integer, Map<String, LocalDate>> countedOn = new TreeMap<>();
  private Random dice;

  private static String style(int item) {
    return item % 3 == 0 ? "Worm" : "Lure";
  }

  private static String home(int item) {
    return item % 2 == 0 ? "Alpha" : "Beta";
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void anyGroupingGivesTheStockOfTheLedger(int seed) {
    dice = new Random(seed);
    stock();
    List<Object> deeds = deeds(false);
    Map<String, Integer> atOnce = play(List.of(deeds));
    assertEquals(atOnce, play(deeds.stream().map(List::of).toList()), "one by one");
    for (int round = 0; round < 3; round++) {
      assertEquals(atOnce, play(groups(deeds)), "in groups");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {21, 22, 23, 24, 25, 26, 27, 28})
  void aCountStandsFromItsPostingOn(int seed) {
    dice = new Random(seed);
    stock();
    List<Object> deeds = deeds(true);
    play(List.of(deeds));
    for (int round = 0; round < 4; round++) {
      play(groups(deeds));
    }
  }

  private void stock() {
    for (int item = 0; item < ITEMS; item++) {
      Map<String, Integer> pieces = new TreeMap<>();
      Map<String, LocalDate> days = new TreeMap<>();
      for (String place : List.of(home(item), "Shelf box")) {
        if (place.equals("Shelf box") && dice.nextInt(3) == 0) {
          continue;
        }
        int count = 8 * (2 + dice.nextInt(3));
        LocalDate day = dice.nextInt(2) == 0 ? LONG_AGO : dice.nextBoolean() ? DAY : null;
        pieces.put(place, count);
        days.put(place, day);
        row("Stock", style(item), "C" + item, place, inUnit(item, count), day == null ? "" : day);
      }
      start.put(item, pieces);
      countedOn.put(item, days);
    }
  }

  /** Nothing that would take more from a place than lies there, in whatever order it is posted. */
  private List<Object> deeds(boolean counts) {
    List<Object> deeds = new ArrayList<>();
    List<Trip> trips = new ArrayList<>();
    for (int n = 0; n < 3; n++) {
      LocalDate day = DAY.minusDays(dice.nextInt(4));
      trips.add(new Trip("Trip " + n, day, new TreeMap<>()));
    }
    for (int item = 0; item < ITEMS; item++) {
      String home = home(item);
      String other = home.equals("Alpha") ? "Beta" : "Alpha";
      boolean ashore = start.get(item).containsKey("Shelf box");
      if (ashore && dice.nextBoolean()) {
        deeds.add(some(EntryTable.BRING, item, "Shelf box", home, 1 + dice.nextInt(9)));
      }
      if (dice.nextBoolean()) {
        deeds.add(some(EntryTable.BUY, item, "", home, 1 + dice.nextInt(3)));
      }
      if (dice.nextInt(3) == 0) {
        // Losses come off the box that holds most: only what is not lost is packed elsewhere.
        deeds.add(some(EntryTable.PACK, item, home, ashore ? "Shelf box" : other, 4));
      } else if (dice.nextBoolean()) {
        trips.get(dice.nextInt(3)).lost().put(item, 1 + dice.nextInt(3));
      }
      if (counts && dice.nextInt(3) == 0) {
        deeds.add(new Deed(EntryTable.COUNT, item, "", home, 0, dice.nextInt(12)));
      }
    }
    deeds.add(new Deed(EntryTable.MOVE, -1, "Bow", "Stern", 0, 0));
    deeds.add(new Deed(EntryTable.CHECK, -1, "", "", 0, 0));
    trips.stream().filter(trip -> !trip.lost().isEmpty()).forEach(deeds::add);
    return deeds;
  }

  private Deed some(EntryTable table, int item, String from, String to, int asked) {
    return new Deed(
        table, item, from, to, asked, dice.nextInt(3) == 0 ? 1 + dice.nextInt(asked) : asked);
  }

  /** In any order; of trips one card is posted at a time. */
  private List<List<Object>> groups(List<Object> deeds) {
    List<Object> order = new ArrayList<>(deeds);
    Collections.shuffle(order, dice);
    List<List<Object>> groups = new ArrayList<>();
    boolean card = false;
    for (Object deed : order) {
      if (groups.isEmpty() || dice.nextInt(4) == 0 || card && deed instanceof Trip) {
        groups.add(new ArrayList<>());
        card = false;
      }
      card |= deed instanceof Trip;
      groups.get(groups.size() - 1).add(deed);
    }
    return groups;
  }

  /** Posts group after group, and holds the stock against the ledger after each. */
  private Map<String, Integer> play(List<List<Object>> wanted) {
    List<List<Object>> groups = new ArrayList<>();
    for (List<Object> group : wanted) { // a card holds one trip
      List<Object> first = new ArrayList<>(group);
      List<Object> trips = group.stream().filter(Trip.class::isInstance).skip(1).toList();
      first.removeAll(trips);
      groups.add(first);
      trips.forEach(trip -> groups.add(List.of(trip)));
    }
    Map<String, List<String>> written = new LinkedHashMap<>();
    sheets.forEach((sheet, rows) -> written.put(sheet, new ArrayList<>(rows)));
    Map<Integer, Map<String, Integer>> ledger = new TreeMap<>();
    start.forEach((item, places) -> ledger.put(item, new TreeMap<>(places)));
    Map<Integer, Set<String>> recounted = new TreeMap<>();
    Season now = season(written);
    for (List<Object> group : groups) {
      Posting posting = Poster.of(typed(group), now, DAY);
      assertEquals(List.of(), posting.faults());
      for (PostedRow row : posting.rows()) {
        List<String> cells = new ArrayList<>();
        for (String heading : HEADINGS.get(row.sheet().name()).split("\\|")) {
          cells.add(row.values().getOrDefault(heading, ""));
        }
        written
            .computeIfAbsent(row.sheet().name(), sheet -> new ArrayList<>())
            .add(String.join("|", cells));
      }
      keep(group, ledger, recounted);
      now = season(written);
      assertEquals(flat(ledger), onHand(now), group.toString());
    }
    assertEquals("Stern", now.boxesByName().get("Delta").compartment());
    assertEquals(DAY, now.boxesByName().get("Delta").lastChecked().orElseThrow());
    return flat(ledger);
  }

  /** The ledger: losses, then what was carried and bought, then counts. */
  private void keep(
      List<Object> group,
      Map<Integer, Map<String, Integer>> ledger,
      Map<Integer, Set<String>> recounted) {
    for (Object deed : group) {
      if (deed instanceof Trip trip) {
        trip.lost()
            .forEach(
                (item, lost) -> {
                  LocalDate counted = countedOn.get(item).get(home(item));
                  boolean in =
                      counted == null
                          || !trip.day().isAfter(counted)
                          || recounted.getOrDefault(item, Set.of()).contains(home(item));
                  if (!in) {
                    ledger.get(item).merge(home(item), -lost, Integer::sum);
                  }
                });
      }
    }
    for (Object one : group) {
      if (one instanceof Deed deed && deed.item() >= 0 && deed.table() != EntryTable.COUNT) {
        int pieces = deed.done() * (deed.table() == EntryTable.BUY ? pack(deed.item()) : 1);
        if (!deed.from().isEmpty()) {
          ledger.get(deed.item()).merge(deed.from(), -pieces, Integer::sum);
        }
        ledger.get(deed.item()).merge(deed.to(), pieces, Integer::sum);
      }
    }
    ledger.values().forEach(places -> places.replaceAll((place, count) -> Math.max(0, count)));
    for (Object one : group) {
      if (one instanceof Deed deed && deed.table() == EntryTable.COUNT) {
        ledger.get(deed.item()).put(deed.to(), deed.done());
        recounted.computeIfAbsent(deed.item(), item -> new HashSet<>()).add(deed.to());
      }
    }
  }

  private static int pack(int item) {
    return item % 3 == 0 ? 8 : 1;
  }

  private static String inUnit(int item, int pieces) {
    return item % 3 == 0 ? String.valueOf(pieces / 8.0) : String.valueOf(pieces);
  }

  private Typed typed(List<Object> group) {
    List<Typed.Row> rows = new ArrayList<>();
    Map<String, Object> card = new LinkedHashMap<>();
    for (Object one : group) {
      if (one instanceof Deed deed) {
        rows.add(tick(deed));
      } else if (one instanceof Trip trip) {
        card.put("Trip", trip.name());
        card.put("Date", trip.day());
        card.put("Hours fished", 6.0);
        trip.lost()
            .forEach(
                (item, lost) ->
                    rows.add(
                        row(
                            EntryTable.CARD_ITEMS,
                            List.of(style(item), "", "C" + item),
                            Map.of(),
                            Map.of("Lost", (double) lost))));
      }
    }
    return new Typed(rows, card, List.of(), List.of(), Map.of());
  }

  private static Typed.Row tick(Deed deed) {
    Map<String, Object> shown = new LinkedHashMap<>();
    if (deed.item() >= 0) {
      shown.put("Style", style(deed.item()));
      shown.put("Colour", "C" + deed.item());
    }
    Object done = deed.done() == deed.asked() ? "yes" : deed.done() + " of " + deed.asked();
    switch (deed.table()) {
      case BRING -> shown.putAll(Map.of("From", deed.from(), "Into", deed.to()));
      case PACK -> shown.putAll(Map.of("From box", deed.from(), "Into", deed.to()));
      case BUY ->
          shown.putAll(
              Map.of(
                  "Into", deed.to(), "Packs", (double) deed.asked(), "Cost", 4.0 * deed.asked()));
      case COUNT -> shown.putAll(Map.of("Box", deed.to()));
      case MOVE -> shown.putAll(Map.of("Box", "Delta", "From", "Bow", "To", "Stern"));
      default -> shown.put("Box", "Delta");
    }
    if (deed.asked() > 0) {
      int each = deed.table() == EntryTable.BUY ? pack(deed.item()) : 1;
      shown.put("Pieces", (double) deed.asked() * each);
    }
    return row(
        deed.table(),
        List.of(),
        shown,
        deed.table() == EntryTable.COUNT
            ? Map.of("Counted", (double) deed.done())
            : Map.of("Done", done));
  }

  private static Typed.Row row(
      EntryTable table, List<String> key, Map<String, Object> shown, Map<String, Object> entries) {
    return new Typed.Row(table, key, 0, shown, entries, new Cell("Sheet", 1, 1));
  }

  private static final Map<String, String> HEADINGS =
      Map.of(
          "Trips", "Trip|Date|Hours",
          "Losses", "Trip|Style|Colour|Lost",
          "Stock", "Style|Colour|Box|Count|Counted on",
          "Restocks", "Date|Style|Colour|Box|Count|Cost",
          "Transfers", "Date|Style|Colour|Count|From box|To box",
          "Box log", "Date|Box|Compartment|Checked",
          "Counts", "Date|Style|Colour|Box|Count");

  private static Season season(Map<String, List<String>> rows) {
    Books books =
        Books.empty()
            .with("Styles", "Style|Family|Counted in|Pieces per pack\nLure|A||\nWorm|B|packs|8")
            .with("Boxes", "Box|Compartment\nAlpha|Bow\nBeta|Stern\nDelta|Bow\nShelf box|Shelf")
            .with(
                "Compartments", "Compartment|From transom|Ashore\nBow|150|\nStern|20|\nShelf|0|yes")
            .with("Settings", "Setting|Value\nAs of|" + DAY);
    HEADINGS.forEach(books::with);
    rows.forEach((sheet, lines) -> books.plus(sheet, String.join("\n", lines)));
    return SeasonOrder.of(Reading.of(books).season());
  }

  private static Map<String, Integer> onHand(Season season) {
    Map<String, Integer> pieces = new TreeMap<>();
    for (Holding holding : OnHandCalculator.of(season).holdings()) {
      if (holding.pieces() > 0) {
        pieces.put(holding.item().colour() + " in " + holding.place().name(), holding.pieces());
      }
    }
    assertTrue(pieces.size() > ITEMS / 2);
    return pieces;
  }

  private static Map<String, Integer> flat(Map<Integer, Map<String, Integer>> ledger) {
    Map<String, Integer> pieces = new TreeMap<>();
    ledger.forEach(
        (item, places) ->
            places.forEach(
                (place, count) -> {
                  if (count > 0) {
                    pieces.put("C" + item + " in " + place, count);
                  }
                }));
    return pieces;
  }

  private void row(String sheet, Object... cells) {
    sheets
        .computeIfAbsent(sheet, name -> new ArrayList<>())
        .add(String.join("|", List.of(cells).stream().map(Object::toString).toList()));
  }
}
