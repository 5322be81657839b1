package sparewell.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The stock of one item as a bookkeeper without a plan would keep it: a slip of paper for every
 * event, one day after the other, and for each box a number, or none while nobody knows. It shares
 * no code with the program and is told nothing but what the sheets say.
 */
final class NaiveStock {
  /** Days are counted; a Stock row without a date has the day {@link #NEVER}. */
  static final int NEVER = -1;

  record Row(int day, String box, int pieces) {}

  record Put(int day, String box, int pieces) {}

  record Carry(int day, String from, String to, int pieces) {}

  record Lost(int day, int pieces) {}

  record Counted(int day, String box, int pieces) {}

  record Moved(int day, String box, String to) {}

  final List<Row> stock = new ArrayList<>();
  final List<Put> puts = new ArrayList<>();
  final List<Carry> carries = new ArrayList<>();
  final List<Lost> losses = new ArrayList<>();
  final List<Counted> counts = new ArrayList<>();
  private final List<Moved> moves;
  private final Map<String, String> home;
  private final Set<String> ashore;
  private final Map<String, Integer> known = new TreeMap<>();
  private final Map<Integer, Integer> owed = new TreeMap<>();

  NaiveStock(Map<String, String> home, Set<String> ashore, List<Moved> moves) {
    this.home = home;
    this.ashore = ashore;
    this.moves = moves;
  }

  /** Box to pieces at the end of the last day; boxes of which nobody knows are not in it. */
  Map<String, Integer> after(int lastDay) {
    for (int day = 0; day <= lastDay; day++) {
      for (Put put : puts) {
        if (put.day == day) {
          change(put.box, put.pieces, day);
        }
      }
      for (Carry carry : carries) {
        if (carry.day == day) {
          change(carry.from, -carry.pieces, day);
          change(carry.to, carry.pieces, day);
        }
      }
      int today = 0;
      for (Lost lost : losses) {
        today += lost.day == day ? lost.pieces : 0;
      }
      lose(day, today);
      for (Row row : stock) {
        if (row.day == day) {
          known.put(row.box, row.pieces);
        }
      }
      for (Counted counted : counts) {
        if (counted.day == day) {
          known.put(counted.box, counted.pieces);
          owed.clear();
        }
      }
    }
    for (Row row : stock) {
      if (row.day == NEVER && lastCount(row.box) == NEVER) {
        known.put(row.box, row.pieces);
      }
    }
    Map<Integer, Integer> before = new TreeMap<>(owed);
    before.forEach(this::lose);
    known.replaceAll((box, pieces) -> Math.max(0, pieces));
    return known;
  }

  private void change(String box, int pieces, int day) {
    boolean inStock = stock.stream().anyMatch(row -> row.box.equals(box));
    if (known.containsKey(box) || !inStock && day > lastCountInStock()) {
      known.merge(box, pieces, Integer::sum);
    }
  }

  /** The day of the item's last count by the Stock sheet. */
  private int lastCountInStock() {
    int last = NEVER;
    for (Row row : stock) {
      int day = row.day != NEVER ? row.day : lastCount(row.box);
      last = Math.max(last, day == NEVER ? Integer.MAX_VALUE : day);
    }
    return last;
  }

  private int lastCount(String box) {
    return counts.stream()
        .filter(c -> c.box.equals(box))
        .mapToInt(Counted::day)
        .max()
        .orElse(NEVER);
  }

  private void lose(int day, int pieces) {
    int left = pieces;
    for (boolean home : List.of(false, true)) {
      List<String> there =
          new ArrayList<>(known.keySet().stream().filter(b -> isAshore(b, day) == home).toList());
      there.sort(Comparator.comparing((String box) -> -known.get(box)).thenComparing(box -> box));
      for (String box : there) {
        int taken = Math.max(0, Math.min(left, known.get(box)));
        known.merge(box, -taken, Integer::sum);
        left -= taken;
      }
      Set<String> counted = new TreeSet<>();
      stock.forEach(row -> counted.add(row.box));
      counts.forEach(count -> counted.add(count.box));
      counted.removeAll(known.keySet());
      if (counted.stream().anyMatch(box -> isAshore(box, day) == home)) {
        return; // it is in a count that is still to come
      }
    }
    if (left > 0 && !known.isEmpty()) {
      owed.merge(day, left, Integer::sum);
    }
  }

  private boolean isAshore(String box, int day) {
    String where = home.getOrDefault(box, box);
    int since = NEVER;
    for (Moved move : moves) {
      if (move.box.equals(box) && move.day <= day && move.day > since) {
        since = move.day;
        where = move.to;
      }
    }
    return ashore.contains(where);
  }

  /** Day 0 is the first of the year. */
  static LocalDate date(int day) {
    return LocalDate.of(2026, 1, 1).plusDays(day);
  }
}
