package sparewell.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import sparewell.season.Box;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.LabelGrid;
import sparewell.table.LabelGrid.Label;
import sparewell.table.LabelGrid.Size;
import sparewell.table.LabelGrid.Words;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/** Labels to print: for each box one for its top, with every colour, and one for its side. */
public final class LabelsSheet {
  /** Tab of the sheet. */
  public static final String NAME = "Labels";

  private static final char NO_BREAK_SPACE = '\u00a0';

  private record Code(String box, String code, String colour) {}

  private LabelsSheet() {}

  /** The sheet for the boxes of a season with what is in them now. */
  public static ReportSheet of(Season season, OnHand onHand) {
    Map<String, List<ItemId>> contents = new LinkedHashMap<>();
    for (Holding holding : onHand.holdings()) {
      if (!holding.place().loose() && holding.pieces() > 0) {
        contents
            .computeIfAbsent(holding.place().box(), box -> new ArrayList<>())
            .add(holding.item());
      }
    }
    List<Label> labels = new ArrayList<>();
    List<Code> codes = new ArrayList<>();
    for (Box box : season.boxes()) {
      List<ItemId> items = contents.getOrDefault(box.name(), List.of());
      Map<String, String> codeOf =
          ColourCodes.of(
              items.stream().map(ItemId::colour).filter(colour -> !colour.isEmpty()).toList());
      codeOf.forEach((colour, code) -> codes.add(new Code(box.name(), code, colour)));
      labels.add(top(box, items, codeOf));
      labels.add(side(box, items));
    }
    Settings.LabelPage grid = season.settings().labels();
    return new ReportSheet(
        NAME,
        "Labels to print at actual size and cut out: two for each box, top first, then side. The codes are explained"
            + " below the labels.",
        List.of(
            new LabelGrid(
                grid.width(), grid.height(), grid.across(), grid.down(), labels, "No boxes yet."),
            new Block.Rows(codeTable(codes))));
  }

  private static Label top(Box box, List<ItemId> items, Map<String, String> codeOf) {
    Map<String, Set<String>> colours = new LinkedHashMap<>();
    for (ItemId item : items) {
      Set<String> of = colours.computeIfAbsent(styleAndSize(item), key -> new LinkedHashSet<>());
      if (!item.colour().isEmpty()) {
        of.add(codeOf.get(item.colour()));
      }
    }
    List<Words> body = new ArrayList<>();
    colours.forEach(
        (what, of) -> {
          body.add(new Words(what, Size.MEDIUM));
          if (!of.isEmpty()) {
            body.add(new Words(String.join(" · ", of), Size.SMALL));
          }
        });
    return new Label(head(box, "TOP"), body, tape(box));
  }

  private static Label side(Box box, List<ItemId> items) {
    Map<String, Set<String>> sizes = new TreeMap<>();
    for (ItemId item : items) {
      Set<String> of = sizes.computeIfAbsent(item.style(), style -> new LinkedHashSet<>());
      if (!item.size().isEmpty()) {
        of.add(unbroken(item.size()));
      }
    }
    List<Words> body = new ArrayList<>();
    sizes.forEach(
        (style, of) ->
            body.add(new Words((style + " " + String.join(", ", of)).strip(), Size.MEDIUM)));
    return new Label(head(box, "SIDE"), body, tape(box));
  }

  private static List<Words> head(Box box, String where) {
    return List.of(
        new Words(box.name(), Size.LARGE),
        new Words(box.compartment() + " · " + where, Size.SMALL));
  }

  private static String styleAndSize(ItemId item) {
    return (item.style() + " " + unbroken(item.size())).strip();
  }

  /** A size whose figure and unit are not parted at the end of a line. */
  private static String unbroken(String size) {
    return size.replace(' ', NO_BREAK_SPACE);
  }

  private static Optional<LabelGrid.Tape> tape(Box box) {
    return box.tapeColour().isEmpty()
        ? Optional.empty()
        : Optional.of(new LabelGrid.Tape(box.tapeColour(), TapeColours.rgb(box.tapeColour())));
  }

  private static Table<Code> codeTable(List<Code> codes) {
    return new Table<>(
        "",
        "What the colour codes mean: first letters of the colour's words, made unique within each box",
        List.of(
            Column.sheetOnly("Box", Format.TEXT, "Box with the code.", Code::box),
            Column.sheetOnly("Code", Format.TEXT, "Code on its labels.", Code::code),
            Column.sheetOnly("Colour", Format.TEXT, "Colour it stands for.", Code::colour)),
        codes,
        "No colours in boxes.");
  }
}
