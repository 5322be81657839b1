package sparewell.sheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sparewell.finding.Cell;
import sparewell.season.Compartment;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Entry;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The place of every item: by item, and a page for each box to check or count it. */
public final class WhereItIsSheet {
  public static final String NAME = "Where it is";
  private static final Columns<Holding> COLUMNS = Columns.of("Where it is");

  private static final int MOST_PIECES = 100_000;

  /** Width of a cell to write into by hand, in points. */
  private static final double ROOM_TO_WRITE = 70;

  /** Height of its row, in points. */
  private static final double HIGH_ENOUGH = 20;

  private static final int WAY_ROWS = 2;

  private static final Comparator<Holding> BY_ITEM =
      Comparator.comparing(Holding::item, ItemId.BY_MEASURE)
          .thenComparing(holding -> holding.place().name())
          .thenComparing(holding -> holding.place().compartment());

  private WhereItIsSheet() {}

  /** The sheet for what is on hand; its boxes come as they stand, from the bow aft, then ashore. */
  public static ReportSheet of(OnHand onHand, Season season) {
    Block items = new Block.Rows(byItem(onHand));
    List<Block> blocks = new ArrayList<>();
    blocks.add(way(Layout.FIRST_ROW + WAY_ROWS + 1 + Layout.rowsOf(items) + 2));
    blocks.add(items);
    for (List<Holding> there : byPlace(onHand, season)) {
      Place place = there.get(0).place();
      blocks.add(new Block.NewPage()); // one to lay into each box
      String title = place.loose() ? "Loose in %2$s" : "%1$s, in %2$s";
      blocks.add(
          new Lines().heading(title, place.box(), place.compartment()).note("To count").block());
      blocks.add(new Block.Rows(toCount(there), place.name(), there.size()));
    }
    return new ReportSheet(
        NAME, "Where is it? First by item; further down box by box, to count.", blocks);
  }

  private static Table<Holding> byItem(OnHand onHand) {
    return COLUMNS.table(
        onHand.holdings().stream().sorted(BY_ITEM).toList(),
        Columns.among(List.of(), Holding::item, box(), compartment(), count()));
  }

  /** One box; Counted stands behind Pieces, beside what it is compared with. */
  private static Table<Holding> toCount(List<Holding> there) {
    Column<Holding> counted =
        Column.entry(
            "Counted",
            "Type the pieces that you counted; 0 where none is left, blank where you did not count.",
            Entry.whole(0, MOST_PIECES, "Pieces counted; 0: none left; blank: not counted.")
                .roomy(ROOM_TO_WRITE, HIGH_ENOUGH));
    return new Table<>(
        "",
        "",
        Columns.among(List.of(), Holding::item, count(), counted, box(), compartment()),
        there,
        "");
  }

  private static Column<Holding> count() {
    return COLUMNS.column("count", Holding::pieces);
  }

  private static Column<Holding> box() {
    return COLUMNS.column("box", holding -> holding.place().box());
  }

  private static Column<Holding> compartment() {
    return COLUMNS.column("compartment", holding -> holding.place().compartment());
  }

  private static Collection<List<Holding>> byPlace(OnHand onHand, Season season) {
    List<String> standing = season.compartments().stream().map(Compartment::name).toList();
    Comparator<Holding> byBox =
        Comparator.<Holding>comparingInt(holding -> standing.indexOf(holding.place().compartment()))
            .thenComparing(holding -> holding.place().box())
            .thenComparing(Holding::item, ItemId.BY_MEASURE);
    Map<Place, List<Holding>> places = new LinkedHashMap<>();
    onHand.holdings().stream()
        .sorted(byBox)
        .forEach(h -> places.computeIfAbsent(h.place(), place -> new ArrayList<>()).add(h));
    Set<Place> inStock = season.stock().stream().map(StockRow::place).collect(Collectors.toSet());
    places
        .values()
        .removeIf(
            there ->
                !inStock.contains(there.get(0).place())
                    && there.stream().allMatch(holding -> holding.pieces() == 0));
    return places.values();
  }

  private static Block way(int below) {
    Block.Line link =
        new Block.Line(
            "Box by box, a page for each, to be printed for a count:",
            Block.Weight.PLAIN,
            Tone.NONE,
            Optional.of(new Cell(NAME, below, 1)));
    return new Lines().add(link).note("Post a count").block();
  }
}
