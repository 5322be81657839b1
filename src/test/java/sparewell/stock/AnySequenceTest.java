package sparewell.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

/**
 * Any sequence of losses, restocks, transfers, box moves and counts, written into the sheets in any
 * order and in rows split at will, gives the stock that {@link NaiveStock} keeps.
 */
class AnySequenceTest {
  private static final int ITEMS = 30;
  private static final int LAST_DAY = 180;
  private static final List<String> COMPARTMENTS = List.of("Bow", "Stern", "Shelf", "Garage");
  private static final Set<String> ASHORE = Set.of("Shelf", "Garage");
  private static final Map<String, String> HOME =
      Map.of("Alpha", "Bow", "Beta", "Stern", "Gamma", "Shelf", "Delta", "Bow");
  private static final List<String> PLACES = List.of("Alpha", "Beta", "Gamma", "Delta", "Shelf");

  private final Map<String, List<String>> sheets = new LinkedHashMap<>();
  private final List<NaiveStock.Moved> moves = new ArrayList<>();
  private final List<NaiveStock> items = new ArrayList<>();
  private Random dice;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16})
  void givesTheSameStock(int seed) {
    dice = new Random(seed);
    for (String box : List.of("Alpha", "Beta", "Gamma", "Delta")) {
      for (int day : days(dice.nextInt(4), LAST_DAY)) {
        moves.add(new NaiveStock.Moved(day, box, any(COMPARTMENTS)));
      }
    }
    moves.forEach(m -> row("Box log", NaiveStock.date(m.day()), m.box(), m.to()));
    int[] trips = days(12, LAST_DAY).stream().mapToInt(day -> day).toArray();
    for (int trip = 0; trip < trips.length; trip++) {
      row("Trips", "T" + trip, NaiveStock.date(trips[trip]), 8);
    }
    for (int item = 0; item < ITEMS; item++) {
      items.add(sequence("C" + item, trips));
    }
    Map<String, Map<String, Integer>> wanted = new TreeMap<>();
    for (int item = 0; item < ITEMS; item++) {
      wanted.put("C" + item, withoutNothing(items.get(item).after(LAST_DAY)));
    }
    assertTrue(wanted.values().stream().filter(m -> m.size() > 1).count() > 5, "worth a test");
    assertEquals(wanted, onHand());
    sheets.values().forEach(rows -> Collections.shuffle(rows, dice));
    assertEquals(wanted, onHand());
  }

  private NaiveStock sequence(String colour, int[] trips) {
    NaiveStock item = new NaiveStock(HOME, ASHORE, moves);
    for (String box : some(PLACES, dice.nextInt(4))) {
      int day =
          dice.nextInt(10) == 0 ? NaiveStock.NEVER : dice.nextInt(dice.nextInt(5) == 0 ? 150 : 20);
      int pieces = dice.nextInt(9);
      item.stock.add(new NaiveStock.Row(day, box, pieces));
      row(
          "Stock",
          "Lure",
          colour,
          box,
          pieces,
          day == NaiveStock.NEVER ? "" : NaiveStock.date(day));
    }
    for (int n = dice.nextInt(5); n > 0; n--) {
      NaiveStock.Put put = new NaiveStock.Put(day(), any(PLACES), dice.nextInt(7));
      item.puts.add(put);
      split(
          put.pieces(),
          part -> row("Restocks", NaiveStock.date(put.day()), "Lure", colour, put.box(), part));
    }
    for (int n = dice.nextInt(6); n > 0; n--) {
      List<String> way = some(PLACES, 2);
      NaiveStock.Carry carry = new NaiveStock.Carry(day(), way.get(0), way.get(1), dice.nextInt(5));
      item.carries.add(carry);
      split(
          carry.pieces(),
          part ->
              row(
                  "Transfers",
                  NaiveStock.date(carry.day()),
                  "Lure",
                  colour,
                  part,
                  carry.from(),
                  carry.to()));
    }
    for (int n = dice.nextInt(7); n > 0; n--) {
      int trip = dice.nextInt(trips.length);
      NaiveStock.Lost lost = new NaiveStock.Lost(trips[trip], dice.nextInt(5));
      item.losses.add(lost);
      split(lost.pieces(), part -> row("Losses", "T" + trip, "Lure", colour, part));
    }
    Set<List<Object>> met = new HashSet<>();
    for (int n = dice.nextInt(3); n > 0; n--) {
      NaiveStock.Counted count = new NaiveStock.Counted(day(), any(PLACES), dice.nextInt(9));
      if (met.add(List.of(count.day(), count.box()))) {
        item.counts.add(count);
        row("Counts", NaiveStock.date(count.day()), "Lure", colour, count.box(), count.pieces());
      }
    }
    return item;
  }

  private Map<String, Map<String, Integer>> onHand() {
    Books books =
        Books.empty()
            .with("Styles", "Style|Family\nLure|Lures")
            .with("Boxes", "Box|Compartment\nAlpha|Bow\nBeta|Stern\nGamma|Shelf\nDelta|Bow")
            .with(
                "Compartments",
                "Compartment|From transom|Ashore\nBow|150|\nStern|20|\nShelf|0|yes\nGarage|0|yes")
            .with("Settings", "Setting|Value\nAs of|" + NaiveStock.date(LAST_DAY))
            .with("Trips", "Trip|Date|Hours")
            .with("Losses", "Trip|Style|Colour|Lost")
            .with("Stock", "Style|Colour|Box|Count|Counted on")
            .with("Restocks", "Date|Style|Colour|Box|Count")
            .with("Transfers", "Date|Style|Colour|Count|From box|To box")
            .with("Box log", "Date|Box|Compartment")
            .with("Counts", "Date|Style|Colour|Box|Count");
    sheets.forEach((sheet, rows) -> books.plus(sheet, String.join("\n", rows)));
    Map<String, Map<String, Integer>> held = new TreeMap<>();
    for (int item = 0; item < ITEMS; item++) {
      held.put("C" + item, new TreeMap<>());
    }
    for (Holding holding : OnHandCalculator.of(Reading.of(books).season()).holdings()) {
      if (holding.pieces() > 0) {
        held.get(holding.item().colour()).put(holding.place().name(), holding.pieces());
      }
    }
    return held;
  }

  private static Map<String, Integer> withoutNothing(Map<String, Integer> known) {
    Map<String, Integer> something = new TreeMap<>(known);
    something.values().removeIf(pieces -> pieces == 0);
    return something;
  }

  private void row(String sheet, Object... cells) {
    sheets
        .computeIfAbsent(sheet, name -> new ArrayList<>())
        .add(String.join("|", List.of(cells).stream().map(Object::toString).toList()));
  }

  /** Writes pieces in one row or in two. */
  private void split(int pieces, IntConsumer write) {
    int first = dice.nextBoolean() ? pieces : dice.nextInt(pieces + 1);
    write.accept(first);
    if (first < pieces) {
      write.accept(pieces - first);
    }
  }

  private int day() {
    return 1 + dice.nextInt(LAST_DAY);
  }

  private Set<Integer> days(int count, int last) {
    Set<Integer> days = new HashSet<>();
    for (int n = 0; n < count; n++) {
      days.add(1 + dice.nextInt(last));
    }
    return days;
  }

  private <T> T any(List<T> list) {
    return list.get(dice.nextInt(list.size()));
  }

  private <T> List<T> some(List<T> list, int count) {
    List<T> shuffled = new ArrayList<>(list);
    Collections.shuffle(shuffled, dice);
    return shuffled.subList(0, count);
  }
}
