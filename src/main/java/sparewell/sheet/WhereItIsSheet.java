package sparewell.sheet;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** Where every item is: by item, and the reverse view by box as a packing check. */
public final class WhereItIsSheet {
  /** Tab of the sheet. */
  public static final String NAME = "Where it is";

  private static final Comparator<Holding> BY_ITEM =
      Comparator.comparing(Holding::item)
          .thenComparing(holding -> holding.place().name())
          .thenComparing(holding -> holding.place().compartment());
  private static final Comparator<Holding> BY_BOX =
      Comparator.<Holding, String>comparing(holding -> holding.place().compartment())
          .thenComparing(holding -> holding.place().box())
          .thenComparing(Holding::item);

  private WhereItIsSheet() {}

  /** The sheet for what is on hand. */
  public static ReportSheet of(OnHand onHand) {
    Column<Holding> style =
        Column.of(
            "style", "Style", Format.TEXT, "Style of the item.", holding -> holding.item().style());
    Column<Holding> size =
        Column.of(
            "size", "Size", Format.TEXT, "Size of the item.", holding -> holding.item().size());
    Column<Holding> colour =
        Column.of(
            "colour",
            "Colour",
            Format.TEXT,
            "Colour of the item.",
            holding -> holding.item().colour());
    Column<Holding> box =
        Column.of(
            "box",
            "Box",
            Format.TEXT,
            "Box it is in; empty where it lies loose.",
            holding -> holding.place().box());
    Column<Holding> compartment =
        Column.of(
            "compartment",
            "Compartment",
            Format.TEXT,
            "Compartment it is in.",
            holding -> holding.place().compartment());
    Column<Holding> count =
        Column.<Holding>of(
                "count",
                "Pieces",
                Format.COUNT,
                "Pieces there now: your count, less losses, plus restocks since.",
                Holding::pieces)
            .summed();
    Table<Holding> byItem =
        new Table<>(
            "where-it-is.csv",
            "By item",
            List.of(style, size, colour, box, compartment, count),
            onHand.holdings().stream().sorted(BY_ITEM).toList(),
            "Nothing in stock.");
    Table<Holding> byBox =
        new Table<>(
            "",
            "By box: tick in the last column what is there",
            List.of(
                style,
                size,
                colour,
                box,
                compartment,
                count,
                Column.sheetOnly("Seen", Format.TEXT, "Room for a tick on paper.", holding -> "")),
            onHand.holdings().stream().filter(h -> h.pieces() > 0).sorted(BY_BOX).toList(),
            "Nothing in stock.");
    Block items = new Block.Rows(byItem);
    // The way down: one line, a blank row, the first table, a blank row.
    int below = Layout.FIRST_ROW + 2 + Layout.rowsOf(items) + 1;
    Block way =
        new Block.Text(
            List.of(
                new Block.Line(
                    "Box by box, to tick off what is there:",
                    Block.Weight.PLAIN,
                    Tone.NONE,
                    Optional.of(new Cell(NAME, below, 1)))));
    return new ReportSheet(
        NAME,
        "Where is it? First by item; further down box by box.",
        List.of(way, items, new Block.Rows(byBox)));
  }
}
