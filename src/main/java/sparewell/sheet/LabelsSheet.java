package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import sparewell.season.Box;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.season.Style;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.stow.StowPlan;
import sparewell.table.Block;
import sparewell.table.LabelGrid;
import sparewell.table.LabelGrid.Label;
import sparewell.table.LabelGrid.Size;
import sparewell.table.LabelGrid.Words;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/**
 * Labels to print: for each box one for its top and one for its side, both with every colour. A box
 * ashore, which may hold the spares of everything, gets its families alone.
 */
public final class LabelsSheet {
  public static final String NAME = "Labels";
  private static final Columns<Map.Entry<String, String>> CODES = Columns.of("Labels");

  private static final Map<String, List<String>> TAPES = Columns.texts("Tape colours");
  private static final char NO_BREAK_SPACE = '\u00a0';
  private static final String LINE = "_".repeat(16);

  private final Season season;
  private final Map<String, String> compartmentSoon = new HashMap<>();
  private final Map<String, List<ItemId>> contents = new HashMap<>();
  private final Map<String, String> codeOf;

  private LabelsSheet(Season season, OnHand onHand, StowPlan stow) {
    this.season = season;
    season.boxes().forEach(box -> compartmentSoon.put(box.name(), box.compartment()));
    stow.boxes().forEach(plan -> compartmentSoon.put(plan.box(), plan.toCompartment()));
    List<String> colours = new ArrayList<>();
    List<Holding> sorted = new ArrayList<>(onHand.holdings());
    sorted.sort(Comparator.comparing(Holding::item, ItemId.BY_MEASURE));
    for (Holding holding : sorted) {
      if (!holding.place().loose() && holding.pieces() > 0) {
        contents
            .computeIfAbsent(holding.place().box(), box -> new ArrayList<>())
            .add(holding.item());
        colours.add(holding.item().colour());
      }
    }
    colours.removeIf(String::isEmpty);
    codeOf = ColourCodes.of(colours);
  }

  public static ReportSheet of(Season season, OnHand onHand, StowPlan stow) {
    return new LabelsSheet(season, onHand, stow).sheet();
  }

  private ReportSheet sheet() {
    List<Label> labels = new ArrayList<>();
    for (Box box : season.boxes()) {
      labels.add(label(box, "TOP", true));
      labels.add(label(box, "SIDE", false));
    }
    Settings.LabelPage grid = season.settings().labels();
    return new ReportSheet(
        NAME,
        "Labels to print at actual size and cut out: two for each box, top first, then side, as the"
            + " boxes stand after the moves. The codes are explained below.",
        List.of(
            new LabelGrid(
                grid.width(), grid.height(), grid.across(), grid.down(), labels, "No boxes yet."),
            new Block.Rows(codeTable())));
  }

  private Label label(Box box, String where, boolean bySize) {
    List<ItemId> items = contents.getOrDefault(box.name(), List.of());
    List<Words> body =
        items.isEmpty()
            ? List.of(new Words(LINE, Size.LARGE))
            : season.ashore(new Place(box.name(), box.compartment()))
                ? families(items)
                : styles(items, bySize);
    return new Label(head(box, where), body, tape(box));
  }

  /** Each style with its sizes, or each size of a style, and the codes of their colours. */
  private List<Words> styles(List<ItemId> items, boolean bySize) {
    Map<String, Set<String>> sizes = new LinkedHashMap<>();
    Map<String, Set<String>> colours = new HashMap<>();
    for (ItemId item : items) {
      String what = bySize ? (item.style() + " " + unbroken(item.size())).strip() : item.style();
      Set<String> of = sizes.computeIfAbsent(what, key -> new LinkedHashSet<>());
      if (!bySize && !item.size().isEmpty()) {
        of.add(unbroken(item.size()));
      }
      Set<String> codes = colours.computeIfAbsent(what, key -> new LinkedHashSet<>());
      if (!item.colour().isEmpty()) {
        codes.add(codeOf.get(item.colour()));
      }
    }
    List<Words> body = new ArrayList<>();
    sizes.forEach(
        (what, of) -> {
          body.add(new Words((what + " " + joined(of)).strip(), Size.MEDIUM));
          if (!colours.get(what).isEmpty()) {
            body.add(new Words(String.join(NO_BREAK_SPACE + "· ", colours.get(what)), Size.SMALL));
          }
        });
    return body;
  }

  /** Sizes, the unit that all share said once: {@code 1/8, 1/4 oz}. */
  static String joined(Set<String> sizes) {
    List<String> units =
        sizes.stream()
            .map(size -> size.substring(Math.max(0, size.lastIndexOf(NO_BREAK_SPACE))))
            .distinct()
            .toList();
    String all = String.join(", ", sizes);
    return units.size() == 1 ? all.replace(units.get(0) + ", ", ", ") : all;
  }

  private List<Words> families(List<ItemId> items) {
    Set<String> families = new TreeSet<>();
    for (ItemId item : items) {
      Style style = season.stylesByName().get(item.style());
      families.add(style == null ? item.style() : style.family());
    }
    return List.of(
        new Words(String.join(", ", families), Size.SMALL),
        new Words(Phrase.count(items.size(), "item"), Size.SMALL));
  }

  private List<Words> head(Box box, String where) {
    return List.of(
        new Words(box.name(), Size.LARGE),
        new Words(compartmentSoon.get(box.name()) + " · " + where, Size.SMALL));
  }

  /** A size whose figure and unit are not parted at the end of a line. */
  private static String unbroken(String size) {
    return size.replace(' ', NO_BREAK_SPACE);
  }

  private static Optional<LabelGrid.Tape> tape(Box box) {
    return box.tapeColour().isEmpty()
        ? Optional.empty()
        : Optional.of(new LabelGrid.Tape(box.tapeColour(), rgb(box.tapeColour())));
  }

  /** Six hexadecimal digits; empty where the word is not known. */
  private static String rgb(String word) {
    List<String> known = TAPES.get(word.strip().toLowerCase(Locale.ROOT));
    return known == null ? "" : known.get(1);
  }

  private Table<Map.Entry<String, String>> codeTable() {
    return CODES.table(
        List.copyOf(codeOf.entrySet()),
        List.of(
            CODES.column("Code", Map.Entry::getValue), CODES.column("Colour", Map.Entry::getKey)));
  }
}
