package sparewell.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import sparewell.event.EventPacking.PackingList;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.spares.Bring;
import sparewell.spares.BuyList;
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
        "Nothing is in stock yet. Say where things can be: compartments, then boxes.",
        Tone.WATCH,
        Optional.of(Cell.ofSheet("Compartments")));
    step("List your styles.", Tone.WATCH, Optional.of(Cell.ofSheet("Styles")));
    step(
        "Count what you have into Stock: a row for each size and colour in each box.",
        Tone.WATCH,
        Optional.of(Cell.ofSheet("Stock")));
    step("Save, close and run analyse again.", Tone.WATCH, Optional.empty());
  }

  private void overPlate() {
    for (Finding finding : results.findings()) {
      if (finding.code() == Code.OVER_PLATE || finding.code() == Code.OVER_PLATE_PERSONS) {
        step(capital(finding.message()) + ". " + capital(finding.done()) + ".", Tone.BAD, load());
      }
    }
  }

  private Optional<Cell> load() {
    return Optional.of(Cell.ofSheet("Weight by compartment"));
  }

  private void mend() {
    long errors =
        results.findings().stream()
            .filter(f -> f.severity() == Severity.ERROR && f.code().id().startsWith("I-"))
            .count();
    if (errors > 0) {
      step(
          "Mend "
              + Phrase.count(errors, "error", "errors")
              + " in your sheets: rows or values were left out.",
          Tone.BAD,
          Optional.of(Cell.ofSheet(InputChecksSheet.NAME)));
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
    List<BuyList.Line> now = buys.lines().stream().filter(BuyList.Line::withinBudget).toList();
    if (now.isEmpty()) {
      return;
    }
    int packs = now.stream().mapToInt(BuyList.Line::packs).sum();
    step(
        "Buy "
            + Phrase.count(packs, "pack")
            + " for "
            + Phrase.money(buys.spent(), buys.currency())
            + buys.budget()
                .map(money -> " of your " + Phrase.money(money, buys.currency()))
                .orElse("")
            + ":",
        Tone.NONE,
        Optional.of(Cell.ofSheet("Buy list")));
    Map<ItemId, List<BuyList.Line>> byItem = new LinkedHashMap<>();
    now.forEach(line -> byItem.computeIfAbsent(line.item(), item -> new ArrayList<>()).add(line));
    details(
        List.copyOf(byItem.values()),
        lines -> packs(lines, buys.currency()),
        lines -> find("Buy list", row -> row == lines.get(0)));
  }

  /** An item's packs, whether for its floor or for losses. */
  private static String packs(List<BuyList.Line> lines, String currency) {
    String words =
        Phrase.count(lines.stream().mapToInt(BuyList.Line::packs).sum(), "pack")
            + " of "
            + lines.get(0).item().spoken();
    if (lines.stream().anyMatch(line -> line.cost().isEmpty())) {
      return words;
    }
    BigDecimal cost =
        lines.stream().map(line -> line.cost().get()).reduce(BigDecimal.ZERO, BigDecimal::add);
    return words + ", " + Phrase.money(cost, currency);
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
        these,
        finding -> capital(finding.message().replaceFirst(";.*", "")),
        finding -> finding.at().sheet().isEmpty() ? Optional.empty() : Optional.of(finding.at()));
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

  private static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
