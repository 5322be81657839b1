package sparewell.sheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.season.Compartment;
import sparewell.season.Place;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Entry;
import sparewell.table.Format;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The place of every item: by item, and a page for each box to check or count it. */
public final class WhereItIsSheet {
  /** Tab of the sheet. */
  public static final String NAME = "Where it is";

  private static final int MOST_PIECES = 100_000;

  /** Width of a cell to write into by hand, in points. */
  private static final double ROOM_TO_WRITE = 70;

  /** Height of its row, in points. */
  private static final double HIGH_ENOUGH = 20;

  private static final int WAY_ROWS = 2;

  /** Blocks above the boxes: the way to them, and all items. */
  private static final int BEFORE_BOXES = 2;

  private static final String HOW_TO_COUNT =
      "Counted: pieces. Leave blank what you did not count; write 0 where none is left.";
  private static final String HOW_TO_POST =
      "After a count, type it there under Counted, close the workbook and run 'sparewell post': each"
          + " becomes a row of Counts. What else you find goes into Counts by hand.";

  private static final Comparator<Holding> BY_ITEM =
      Comparator.comparing(Holding::item)
          .thenComparing(holding -> holding.place().name())
          .thenComparing(holding -> holding.place().compartment());

  /** Height that a page takes for sure, upright or lying, in points. */
  private static final double PAGE = 550;

  /** Title, headings and sums of a box, and the space between, in points. */
  private static final double AROUND_BOX = 75;

  private WhereItIsSheet() {}

  /** The sheet for what is on hand; its boxes come as they stand, from the bow aft, then ashore. */
  public static ReportSheet of(OnHand onHand, List<Compartment> compartments) {
    Column<Holding> box =
        Format.TEXT.column(
            "box",
            "Box",
            "Box it is in; empty where it lies loose.",
            holding -> holding.place().box());
    Column<Holding> compartment =
        Format.TEXT.column(
            "compartment",
            "Compartment",
            "Compartment it is in.",
            holding -> holding.place().compartment());
    Column<Holding> count =
        Format.COUNT
            .<Holding>column(
                "count",
                "Pieces",
                "Pieces there now: your count, less losses, with what was added and carried since.",
                Holding::pieces)
            .summed();
    Table<Holding> byItem =
        new Table<>(
            "where-it-is.csv",
            "By item",
            ItemColumns.among(List.of(), Holding::item, box, compartment, count),
            onHand.holdings().stream().sorted(BY_ITEM).toList(),
            "Nothing in stock.");
    Column<Holding> counted =
        Column.entry(
            "Counted",
            "Type the pieces that you counted; 0 where none is left, blank where you did not count.",
            Entry.whole(0, MOST_PIECES, "Pieces counted; 0: none left; blank: not counted.")
                .roomy(ROOM_TO_WRITE, HIGH_ENOUGH),
            holding -> Optional.empty());
    // Behind Pieces, so that what is written stands beside what it is compared with.
    List<Column<Holding>> toCount =
        ItemColumns.among(List.of(), Holding::item, count, counted, box, compartment);
    Block items = new Block.Rows(byItem);
    List<Block> blocks = new ArrayList<>();
    blocks.add(way(Layout.FIRST_ROW + WAY_ROWS + 1 + Layout.rowsOf(items) + 2));
    blocks.add(items);
    String on = "";
    double filled = 0;
    for (List<Holding> there : byPlace(onHand, compartments)) {
      String standsIn = there.get(0).place().compartment();
      double high = AROUND_BOX + there.size() * HIGH_ENOUGH;
      filled += high;
      if (blocks.size() == BEFORE_BOXES || !standsIn.equals(on) || filled > PAGE) {
        blocks.add(new Block.NewPage()); // boxes that stand together share a page, none is torn
        filled = high;
      }
      on = standsIn;
      blocks.add(head(there.get(0).place()));
      blocks.add(new Block.Rows(new Table<>("", "", toCount, there, "")));
    }
    return new ReportSheet(
        NAME, "Where is it? First by item; further down box by box, to count.", blocks);
  }

  private static Collection<List<Holding>> byPlace(OnHand onHand, List<Compartment> compartments) {
    List<String> standing = compartments.stream().map(Compartment::name).toList();
    Comparator<Holding> byBox =
        Comparator.<Holding>comparingInt(holding -> standing.indexOf(holding.place().compartment()))
            .thenComparing(holding -> holding.place().box())
            .thenComparing(Holding::item);
    Map<Place, List<Holding>> places = new LinkedHashMap<>();
    onHand.holdings().stream()
        .sorted(byBox)
        .forEach(h -> places.computeIfAbsent(h.place(), place -> new ArrayList<>()).add(h));
    places.values().removeIf(there -> there.stream().allMatch(h -> h.pieces() == 0));
    return places.values();
  }

  private static Block head(Place place) {
    String title =
        place.loose()
            ? "Loose in " + place.compartment()
            : place.box() + ", in " + place.compartment();
    return new Block.Text(List.of(Block.Line.heading(title), Phrase.small(HOW_TO_COUNT)));
  }

  /** The way down, and what the pages are for. */
  private static Block way(int below) {
    Block.Line link =
        new Block.Line(
            "Box by box, pages for each compartment; need not be printed:",
            Block.Weight.PLAIN,
            Tone.NONE,
            Optional.of(new Cell(NAME, below, 1)));
    return new Block.Text(List.of(link, Phrase.small(HOW_TO_POST)));
  }
}
