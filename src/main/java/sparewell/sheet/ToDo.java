package sparewell.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import sparewell.event.EventPacking.PackingList;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.spares.Bring;
import sparewell.spares.BuyList;
import sparewell.spares.SparesRow;
import sparewell.stow.BoxPlan;
import sparewell.stow.MoveStep;
import sparewell.table.Block;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** What to do now, in order, at most one screen; each line leads to where the rest stands. */
final class ToDo {
  private static final int MOST_OF_A_KIND = 3;

  private final Results results;
  private final List<ReportSheet> sheets;
  private final List<Block.Line> lines = new ArrayList<>();
  private int number;

  ToDo(Results results, List<ReportSheet> sheets) {
    this.results = results;
    this.sheets = sheets;
  }

  List<Block.Line> lines() {
    lines.add(Block.Line.heading("Do this, in this order"));
    overPlate();
    mend();
    bring();
    buy();
    pack();
    move();
    findings(Code.RECOUNT, "Recount", "item", "items");
    findings(Code.BOX_CHECK_DUE, "Check", "box", "boxes");
    if (results.onHand().items().isEmpty()) {
      begin();
    } else if (number == 0) {
      lines.add(Block.Line.of("Nothing to do: everything you need is aboard and well stowed."));
    }
    return lines;
  }

  /** The way to a first answer. */
  private void begin() {
    step(
        "Say where things can be: the boat's compartments, then your boxes.",
        Tone.WATCH,
        Optional.of(Cell.ofSheet("Compartments")));
    step(
        "List your styles of lure, each with its family.",
        Tone.WATCH,
        Optional.of(Cell.ofSheet("Styles")));
    step(
        "Count what you have into Stock: a row for each size and colour in each box.",
        Tone.WATCH,
        Optional.of(Cell.ofSheet("Stock")));
    step("Save, close and run analyse again.", Tone.WATCH, Optional.empty());
  }

  private void overPlate() {
    for (Finding finding : results.findings()) {
      if (finding.code() == Code.OVER_PLATE || finding.code() == Code.OVER_PLATE_PERSONS) {
        step(
            Phrase.capital(finding.message()) + ". " + Phrase.capital(finding.done()) + ".",
            Tone.BAD,
            load());
      }
    }
  }

  private Optional<Cell> load() {
    return Optional.of(Cell.ofSheet("Weight by compartment"));
  }

  private void mend() {
    List<Finding> errors =
        results.findings().stream()
            .filter(f -> f.severity() == Severity.ERROR && f.code().id().startsWith("I-"))
            // What follows from another row goes away with it.
            .sorted(Comparator.comparing(f -> f.code() == Code.LEFT_OUT_KEY))
            .toList();
    if (!errors.isEmpty()) {
      step(
          "Mend "
              + Phrase.count(errors.size(), "error", "errors")
              + " in your sheets (rows or values were left out):",
          Tone.BAD,
          Optional.of(Cell.ofSheet(InputChecksSheet.NAME)));
      details(errors, finding -> Phrase.capital(finding.message()), ToDo::place);
    }
  }

  private void bring() {
    List<Bring> brings = results.spares().brings();
    if (brings.isEmpty()) {
      return;
    }
    int pieces = brings.stream().mapToInt(Bring::pieces).sum();
    step(
        "Bring " + Phrase.count(pieces, "piece") + " aboard from ashore:",
        Tone.NONE,
        Optional.of(Cell.ofSheet("Spares")));
    details(
        brings,
        bring ->
            bring.pieces()
                + " "
                + bring.item().spoken()
                + ", from "
                + bring.from().name()
                + bring.to().map(Place::name).map(name -> " to " + name).orElse(""),
        bring -> find("Spares", row -> row == bring));
  }

  private void buy() {
    BuyList buys = results.buys();
    if (buys.lines().isEmpty()) {
      return;
    }
    List<List<BuyList.Line>> now = byItem(BuyList.Line::withinBudget);
    step(
        now.isEmpty()
            ? "Buy list: "
                + buys.budget().map(money -> Phrase.money(money, buys.currency())).orElseThrow()
                + " pays for nothing on it."
            : "Buy " + wares(now) + price(now) + ":",
        Tone.NONE,
        Optional.of(Cell.ofSheet("Buy list")));
    details(now, this::words, lines -> find("Buy list", row -> row == lines.get(0)));
    beyond();
  }

  /** What matters of the list and is not paid for, in a line. */
  private void beyond() {
    Set<ItemId> important =
        results.spares().rows().stream()
            .filter(row -> row.used() && row.importance() >= 1)
            .map(SparesRow::item)
            .collect(Collectors.toSet());
    List<List<BuyList.Line>> left =
        byItem(line -> !line.withinBudget() && important.contains(line.item()));
    if (!left.isEmpty()) {
      int more = left.size() - MOST_OF_A_KIND;
      lines.add(
          Block.Line.of(
              "     Beyond the budget: "
                  + left.stream()
                      .limit(MOST_OF_A_KIND)
                      .map(this::words)
                      .collect(Collectors.joining("; "))
                  + (more > 0 ? "; and " + Phrase.count(more, "item") + " more" : "")
                  + "."));
    }
  }

  /** The list's lines put together by item, whether for its floor or for losses. */
  private List<List<BuyList.Line>> byItem(Predicate<BuyList.Line> wanted) {
    Map<ItemId, List<BuyList.Line>> byItem = new LinkedHashMap<>();
    results.buys().lines().stream()
        .filter(wanted)
        .forEach(line -> byItem.computeIfAbsent(line.item(), item -> new ArrayList<>()).add(line));
    return List.copyOf(byItem.values());
  }

  /** Packs and single pieces in all. */
  private static String wares(List<List<BuyList.Line>> items) {
    Map<Boolean, Integer> packs =
        items.stream()
            .flatMap(List::stream)
            .collect(
                Collectors.partitioningBy(
                    line -> line.packs() == line.pieces(),
                    Collectors.summingInt(BuyList.Line::packs)));
    List<String> parts = new ArrayList<>();
    if (packs.get(false) > 0) {
      parts.add(Phrase.count(packs.get(false), "pack"));
    }
    if (packs.get(true) > 0) {
      parts.add(Phrase.count(packs.get(true), "piece"));
    }
    return String.join(" and ", parts);
  }

  private String price(List<List<BuyList.Line>> items) {
    BuyList buys = results.buys();
    long unpriced = items.stream().filter(item -> cost(item).isEmpty()).count();
    if (unpriced == items.size()) {
      return items.size() == 1 ? ", price not known" : ", prices not known";
    }
    return " for "
        + Phrase.money(buys.spent(), buys.currency())
        + buys.budget().map(money -> " of your " + Phrase.money(money, buys.currency())).orElse("")
        + (unpriced > 0 ? " and what has no price yet" : "");
  }

  private String words(List<BuyList.Line> item) {
    int packs = item.stream().mapToInt(BuyList.Line::packs).sum();
    int pieces = item.stream().mapToInt(BuyList.Line::pieces).sum();
    return Phrase.packs(packs, pieces)
        + " of "
        + item.get(0).item().spoken()
        + ", "
        + cost(item)
            .map(money -> Phrase.money(money, results.buys().currency()))
            .orElse("price not known");
  }

  /** Money for an item's packs; empty where their price is not known. */
  private static Optional<BigDecimal> cost(List<BuyList.Line> item) {
    return item.get(0).cost().isEmpty()
        ? Optional.empty()
        : Optional.of(
            item.stream()
                .map(line -> line.cost().orElseThrow())
                .reduce(BigDecimal.ZERO, BigDecimal::add));
  }

  private void pack() {
    for (PackingList list : results.packing().lists()) {
      if (list.boxed() && list.pieces() > 0) {
        step(
            "Pack "
                + list.event().box()
                + " for "
                + list.event().name()
                + ": "
                + Phrase.count(list.pieces(), "piece")
                + (list.shortPieces() > 0 ? ", " + list.shortPieces() + " stay short" : "")
                + ".",
            Tone.NONE,
            Optional.of(Cell.ofSheet("Event packing")));
      }
    }
  }

  private void move() {
    List<MoveStep> steps = results.stow().steps();
    if (steps.isEmpty()) {
      return;
    }
    step(
        "Move "
            + Phrase.count(results.stow().recommendedMoves(), "box", "boxes")
            + " for a boat light forward and heavy aft:",
        Tone.NONE,
        Optional.of(Cell.ofSheet("Stow plan")));
    details(
        steps,
        StowPlanSheet::instruction,
        step ->
            find("Stow plan", row -> row instanceof BoxPlan plan && plan.box().equals(step.box())));
  }

  private void findings(Code code, String verb, String one, String many) {
    List<Finding> these = results.findings().stream().filter(f -> f.code() == code).toList();
    if (these.isEmpty()) {
      return;
    }
    step(
        verb + " " + Phrase.count(these.size(), one, many) + ":",
        Tone.WATCH,
        Optional.of(Cell.ofSheet(InputChecksSheet.NAME)));
    details(
        these, finding -> Phrase.capital(finding.message().replaceFirst(";.*", "")), ToDo::place);
  }

  private static Optional<Cell> place(Finding finding) {
    return Optional.of(finding.at()).filter(at -> !at.sheet().isEmpty());
  }

  private void step(String text, Tone tone, Optional<Cell> link) {
    number++;
    lines.add(new Block.Line(number + ". " + text, Block.Weight.STRONG, tone, link));
  }

  private <T> void details(
      List<T> all, Function<T, String> words, Function<T, Optional<Cell>> link) {
    int shown = all.size() <= MOST_OF_A_KIND + 1 ? all.size() : MOST_OF_A_KIND;
    for (T one : all.subList(0, shown)) {
      lines.add(
          new Block.Line(
              "     " + words.apply(one), Block.Weight.PLAIN, Tone.NONE, link.apply(one)));
    }
    if (shown < all.size()) {
      lines.add(Block.Line.of("     … and " + (all.size() - shown) + " more there"));
    }
  }

  /** The row of a table on a sheet that shows the wanted record. */
  private Optional<Cell> find(String sheetName, Predicate<Object> wanted) {
    for (ReportSheet sheet : sheets) {
      if (!sheet.name().equals(sheetName)) {
        continue;
      }
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Rows rows) {
          Table<?> table = rows.table();
          for (int i = 0; i < table.rows().size(); i++) {
            if (wanted.test(table.rows().get(i))) {
              return Layout.cellOf(sheet, table, i, "");
            }
          }
        }
      }
    }
    return Optional.of(Cell.ofSheet(sheetName));
  }
}
