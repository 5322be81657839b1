package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import sparewell.season.Place;
import sparewell.stock.PieceMove;
import sparewell.table.Column;
import sparewell.table.Entry;

/**
 * A table of ours with cells that the angler types into: how its rows are known again from run to
 * run, wherever they stand by then.
 */
public enum EntryTable {
  BRING,
  BUY,
  PACK,
  MOVE,
  CHECK,
  COUNT,
  CARD_ITEMS,
  CARD_STYLES;

  public static final String DONE = "Done";

  /** Heading of the place where pieces go; the angler names it where the plan cannot. */
  public static final String INTO = "Into";

  /** Words under it where the angler is to type a place. */
  public static final String OF_CHOICE = "a box of your choice";

  /** Words in place of a day where a box was never checked. */
  public static final String NEVER = "never checked so far";

  private final String sheet;
  private final List<String> keys;
  private final String count;
  private final String figure;
  private final List<String> entries;

  EntryTable() {
    List<String> line = Columns.texts("Tables to type into").get(name());
    this.sheet = line.get(1);
    this.keys = List.of(line.get(2).split(", "));
    this.count = line.get(3);
    this.figure = line.get(4);
    this.entries = List.of(line.get(5).split(", "));
  }

  public static List<EntryTable> of(String sheet) {
    return List.of(values()).stream().filter(kind -> kind.sheet.equals(sheet)).toList();
  }

  /** Tab of its sheet where nobody else has that name. */
  public String sheet() {
    return sheet;
  }

  /** Headings of the columns by which a row is known again. */
  public List<String> keys() {
    return keys;
  }

  /** Heading of the count that a tick stands for; empty where a row is done or not. */
  public Optional<String> count() {
    return Optional.of(count).filter(heading -> !heading.isEmpty());
  }

  /**
   * Heading of a column that holds a number, or a day or {@link #NEVER}; empty where there is none.
   */
  public Optional<String> figure() {
    return Optional.of(figure).filter(heading -> !heading.isEmpty());
  }

  /** The key that every line has; the others may be blank. */
  public String naming() {
    return this == PACK ? "Style" : keys.get(0);
  }

  public List<String> entries() {
    return entries;
  }

  public List<String> headings() {
    List<String> all = new ArrayList<>(keys);
    count().ifPresent(all::add);
    all.addAll(entries);
    return all;
  }

  /** The column of places where pieces go, with cells to type into where another would do. */
  static <R> Column<R> into(Function<R, Optional<Place>> to, Predicate<R> open) {
    return Columns.<R>of("To do")
        .column(INTO, row -> Phrase.place(to.apply(row).orElse(PieceMove.OF_CHOICE)))
        .entered(row -> open.test(row) ? Optional.of(named()) : Optional.empty());
  }

  static Entry named() {
    return Entry.anything("Type the box or compartment where you put them, if it was another.");
  }

  static <R> Column<R> done() {
    return done(row -> true);
  }

  /** The same, with cells to tick only in the rows that ask for something. */
  static <R> Column<R> done(Predicate<R> asks) {
    Entry entry = Entry.anything("yes once done, or how many where fewer", "yes");
    return Columns.<R>of("To do")
        .column(DONE, row -> Optional.empty())
        .entered(row -> asks.test(row) ? Optional.of(entry) : Optional.empty());
  }
}
