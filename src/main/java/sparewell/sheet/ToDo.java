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
import sparewell.season.DueCheck;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.spares.Bring;
import sparewell.spares.BuyList;
import sparewell.spares.SparesRow;
import sparewell.stow.BoxPlan;
import sparewell.stow.MoveStep;
import sparewell.stow.Refusal;
import sparewell.table.Block;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** What to do now, in order; each step leads to where it stands in full. */
final class ToDo {
  private static final int MOST_BEYOND = 3;

  private final Results results;
  private final List<ReportSheet> sheets;
  private final List<Step> steps = new ArrayList<>();

  private ToDo(Results results, List<ReportSheet> sheets) {
    this.results = results;
    this.sheets = sheets;
  }

  /** The steps; {@code sheets} are those that they lead to. */
  static List<Step> of(Results results, List<ReportSheet> sheets) {
    ToDo toDo = new ToDo(results, sheets);
    toDo.overPlate();
    toDo.mend();
    toDo.bring();
    toDo.buy();
    toDo.pack();
    toDo.move();
    toDo.recount();
    toDo.checkBoxes();
    if (results.onHand().items().isEmpty()) {
      toDo.begin();
    }
    return List.copyOf(toDo.steps);
  }

  /** The way to a first answer. */
  private void begin() {
    step("Say where things can be: the boat's compartments, then your boxes", "Compartments");
    step("List your styles of lure, each with its family", "Styles");
    step("Count what you have into Stock: a row for each size and colour in each box", "Stock");
    steps.add(Step.of("Save, close and run analyse again", Tone.WATCH, Optional.empty()));
  }

  private void step(String text, String sheet) {
    steps.add(Step.of(text, Tone.WATCH, Optional.of(Cell.ofSheet(sheet))));
  }

  private void overPlate() {
    for (Finding finding : results.findings()) {
      if (finding.code() == Code.OVER_PLATE || finding.code() == Code.OVER_PLATE_PERSONS) {
        steps.add(
            Step.of(
                Phrase.capital(finding.message()) + ". " + Phrase.capital(finding.done()),
                Tone.BAD,
                Optional.of(Cell.ofSheet("Weight by compartment"))));
      }
    }
  }

  private void mend() {
    List<Finding> errors =
        results.findings().stream()
            .filter(f -> f.severity() == Severity.ERROR && f.code().about() == Code.About.INPUT)
            // What follows from another row goes away with it.
            .sorted(Comparator.comparing(f -> f.code() == Code.LEFT_OUT_KEY))
            .toList();
    if (!errors.isEmpty()) {
      step(
          "Mend "
              + Phrase.count(errors.size(), "error", "errors")
              + " in your sheets (rows or values were left out)",
          Tone.BAD,
          InputChecksSheet.NAME,
          details(errors, finding -> Phrase.capital(finding.message()), ToDo::place));
    }
  }

  private void bring() {
    List<Bring> brings = results.spares().brings();
    if (brings.isEmpty()) {
      return;
    }
    int pieces = brings.stream().mapToInt(Bring::pieces).sum();
    step(
        "Bring " + Phrase.count(pieces, "piece") + " aboard from ashore",
        Tone.NONE,
        SparesSheet.NAME,
        details(
            brings,
            bring ->
                bring.pieces()
                    + " "
                    + bring.item().spoken()
                    + ", from "
                    + bring.from().name()
                    + bring.to().map(Place::name).map(name -> " to " + name).orElse(""),
            bring -> find(SparesSheet.NAME, row -> row == bring)));
  }

  private void buy() {
    BuyList buys = results.buys();
    if (buys.lines().isEmpty()) {
      return;
    }
    List<List<BuyList.Line>> now = byItem(BuyList.Line::withinBudget);
    steps.add(
        new Step(
            now.isEmpty()
                ? "Buy list: "
                    + buys.budget().map(money -> Phrase.money(money, buys.currency())).orElseThrow()
                    + " pays for nothing on it"
                : "Buy " + wares(now) + price(now),
            Tone.NONE,
            Optional.of(Cell.ofSheet("Buy list")),
            details(now, this::words, lines -> find("Buy list", row -> row == lines.get(0))),
            beyond()));
  }

  /** What matters of the list and is not paid for, in a line. */
  private Optional<String> beyond() {
    Set<ItemId> important =
        results.spares().rows().stream()
            .filter(row -> row.used() && row.importance() >= 1)
            .map(SparesRow::item)
            .collect(Collectors.toSet());
    List<List<BuyList.Line>> left =
        byItem(line -> !line.withinBudget() && important.contains(line.item()));
    int more = left.size() - MOST_BEYOND;
    return left.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Beyond the budget: "
                + left.stream()
                    .limit(MOST_BEYOND)
                    .map(this::words)
                    .collect(Collectors.joining("; "))
                + (more > 0 ? "; and " + Phrase.count(more, "item") + " more" : "")
                + ".");
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
                + (list.shortPieces() > 0 ? ", " + list.shortPieces() + " stay short" : ""),
            Tone.NONE,
            "Event packing",
            List.of());
      }
    }
  }

  private void move() {
    if (results.stow().refusal().orElse(null) instanceof Refusal.Outside outside) {
      steps.add(
          Step.of(
              "No stow plan: " + StowPlanSheet.refusal(outside),
              Tone.BAD,
              Optional.of(outside.places().get(0).positionAt())));
    }
    List<MoveStep> moves = results.stow().steps();
    if (moves.isEmpty()) {
      return;
    }
    step(
        "Move "
            + Phrase.count(results.stow().recommendedMoves(), "box", "boxes")
            + " for a boat light forward and heavy aft",
        Tone.NONE,
        "Stow plan",
        details(
            moves,
            StowPlanSheet::instruction,
            step ->
                find(
                    "Stow plan",
                    row -> row instanceof BoxPlan plan && plan.box().equals(step.box()))));
  }

  private void recount() {
    List<Finding> these = with(Code.RECOUNT);
    if (!these.isEmpty()) {
      step(
          "Recount " + Phrase.count(these.size(), "item", "items"),
          Tone.WATCH,
          InputChecksSheet.NAME,
          details(these, finding -> Phrase.capital(finding.message()), ToDo::place));
    }
  }

  private void checkBoxes() {
    List<DueCheck> due = DueCheck.of(results.season());
    if (!due.isEmpty()) {
      step(
          "Check " + Phrase.count(due.size(), "box", "boxes"),
          Tone.WATCH,
          AfterTripSheet.NAME,
          details(due, ToDo::overdue, check -> Optional.of(check.box().origin())));
    }
  }

  private static String overdue(DueCheck check) {
    return check.box().name()
        + check.dueOn().map(due -> ", due on " + due).orElse(", never checked so far");
  }

  private List<Finding> with(Code code) {
    return results.findings().stream().filter(f -> f.code() == code).toList();
  }

  private static Optional<Cell> place(Finding finding) {
    return Optional.of(finding.at()).filter(at -> !at.sheet().isEmpty());
  }

  private void step(String text, Tone tone, String sheet, List<Step.Detail> details) {
    steps.add(new Step(text, tone, Optional.of(Cell.ofSheet(sheet)), details, Optional.empty()));
  }

  private static <T> List<Step.Detail> details(
      List<T> all, Function<T, String> words, Function<T, Optional<Cell>> link) {
    return all.stream().map(one -> new Step.Detail(words.apply(one), link.apply(one))).toList();
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
