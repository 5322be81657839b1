package sparewell.sheet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import sparewell.event.EventPacking.Action;
import sparewell.event.EventPacking.PackingList;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.season.DueCheck;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.spares.Bring;
import sparewell.spares.BuyList;
import sparewell.stow.BoxPlan;
import sparewell.stow.MoveStep;
import sparewell.stow.Refusal;
import sparewell.table.Block;
import sparewell.table.Layout;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;
import sparewell.units.UnitSystem;

/** The steps to take now, in order; each leads to where it stands in full. */
final class ToDo {
  private static final int MOST_BEYOND = 3;

  /** Days for which an event without a trip is asked for; then it was not fished, or not logged. */
  private static final int DAYS_TO_LOG = 30;

  private static final Set<Code> OVER_PLATE = EnumSet.of(Code.OVER_PLATE, Code.OVER_PLATE_PERSONS);

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
    toDo.post();
    toDo.log();
    toDo.recount(); // what follows takes the counts as they are
    toDo.bring();
    toDo.buy();
    toDo.pack();
    toDo.move();
    toDo.checkBoxes();
    if (results.onHand().items().isEmpty()) {
      toDo.begin();
    }
    return List.copyOf(toDo.steps);
  }

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
    results.findings().stream()
        .filter(finding -> OVER_PLATE.contains(finding.code()))
        .forEach(
            finding ->
                step(
                    Phrase.capital(finding.message()) + ". " + Phrase.capital(finding.done()),
                    Tone.BAD,
                    WeightByCompartmentSheet.NAME,
                    List.of()));
  }

  /** Asks to post ticks: they count only once posted; until then all is asked for again. */
  private void post() {
    Typed typed = results.typed();
    long ticked = typed.rows().stream().filter(Typed.Row::ticked).count();
    if (ticked > 0 || TripCardSheet.filled(typed)) {
      String text =
          Phrase.text(
              "Post what you typed: %s not posted yet; save, close and run 'sparewell post'%s",
              ticked == 0
                  ? "the trip card"
                  : Phrase.count(ticked, "entry", "entries") + " on our sheets",
              cardWaits(typed));
      steps.add(Step.of(text, Tone.WATCH, Optional.empty()));
    }
  }

  /** A card with something typed keeps its place before that of the next event. */
  private String cardWaits(Typed typed) {
    LocalDate asOf = results.season().settings().asOf();
    return CardEvent.of(results)
        .filter(event -> TripCardSheet.filled(typed) && event.date().isBefore(asOf))
        .map(event -> " (" + TripCardSheet.NAME + " still waits for " + event.name() + ")")
        .orElse("");
  }

  /** An event behind without a trip: all the figures take it that nothing was lost there. */
  private void log() {
    Season season = results.season();
    LocalDate asOf = season.settings().asOf();
    Optional<Event> card = CardEvent.of(results);
    boolean filled = TripCardSheet.filled(results.typed());
    for (Event event : season.events()) {
      if (event.lastDay().isBefore(asOf)
          && !event.date().isBefore(asOf.minusDays(DAYS_TO_LOG))
          && !CardEvent.logged(event, season)
          && !(filled && card.filter(one -> !one.equals(event)).isEmpty())) {
        boolean waits = card.filter(event::equals).isPresent();
        step(
            Phrase.text(
                "Log %s (%s): no trip of that time is in Trips, so what you lost there still counts"
                    + " as aboard; %sdelete the event if you did not fish it",
                event.name(),
                event.date(),
                waits ? TripCardSheet.NAME + " still waits for it: type it in and post, or " : ""),
            waits ? TripCardSheet.NAME : "Trips");
      }
    }
  }

  private void mend() {
    List<Finding> errors =
        Causes.first(
            results.findings().stream()
                .filter(f -> f.severity() == Severity.ERROR && f.code().about() == Code.About.INPUT)
                .toList());
    List<Finding> causes = errors.stream().filter(error -> !Causes.follows(error)).toList();
    int waiting = errors.size() - causes.size();
    long all = results.findings().stream().filter(f -> f.severity() == Severity.ERROR).count();
    if (!errors.isEmpty()) {
      steps.add(
          new Step(
              Phrase.text(
                  "Mend %s%s in your sheets (rows or values were left out)",
                  causes.size() == all ? "" : causes.size() + " of ", Phrase.count(all, "error")),
              Tone.BAD,
              Optional.of(Cell.ofSheet(InputChecksSheet.NAME)),
              details(causes, finding -> Phrase.capital(finding.message()), ToDo::place),
              waiting == 0
                  ? Optional.empty()
                  : Optional.of(
                      Phrase.count(waiting, "more is a row", "more are rows")
                          + " left out because of these.")));
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
                Phrase.text(
                    "%d %s, from %s%s",
                    bring.pieces(),
                    bring.item().spoken(),
                    bring.from().name(),
                    into(bring).map(place -> " to " + place).orElse("")),
            bring -> find(SparesSheet.NAME, row -> row == bring)));
  }

  /** The place by the sheet, on which the angler may have typed another place. */
  private Optional<String> into(Bring bring) {
    return row(SparesSheet.NAME, row -> row == bring)
        .flatMap(row -> row.shown(EntryTable.INTO, results.season().settings().units()))
        .map(Ticks::plain)
        .filter(place -> !place.equals(EntryTable.OF_CHOICE));
  }

  private void buy() {
    BuyList buys = results.buys();
    if (buys.lines().isEmpty()) {
      return;
    }
    List<BuyList.Line> needed = BuyWords.bought(buys, false);
    List<BuyList.Line> fills = BuyWords.bought(buys, true);
    List<BuyList.Line> now = needed.isEmpty() ? fills : needed;
    Optional<String> purse = buys.budget().map(money -> Phrase.money(money, buys.currency()));
    steps.add(
        new Step(
            now.isEmpty()
                ? nothingBought(buys)
                : "Buy "
                    + BuyWords.wares(now)
                    + BuyWords.price(now, buys)
                    + purse.map(money -> " of your " + money).orElse("")
                    + (needed.isEmpty()
                        ? "; that only fills floors"
                        : (BuyWords.cost(now).isEmpty() ? ", to " : " to ")
                            + BuyWords.effect(buys, "take")),
            Tone.NONE,
            Optional.of(Cell.ofSheet(BuyListSheet.NAME)),
            details(
                byItem(now.isEmpty() ? unpriced(buys) : now),
                this::words,
                item -> find(BuyListSheet.NAME, r -> r == item.get(0))),
            remark()));
  }

  /** A list of which nothing is bought: the budget is too small, or no price is known. */
  private static String nothingBought(BuyList buys) {
    return unpriced(buys).size() == buys.lines().size()
        ? "Fill in Pack price, so that the budget can pay for what is to be bought"
        : "Buy list: your "
            + Phrase.money(buys.budget().orElseThrow(), buys.currency())
            + " pay for nothing on it"
            + (unpriced(buys).isEmpty() ? "" : ", and these have no price");
  }

  private static List<BuyList.Line> unpriced(BuyList buys) {
    return buys.lines().stream().filter(line -> line.cost().isEmpty()).toList();
  }

  /** The rest of the list: floors, and what is needed and not paid for. */
  private Optional<String> remark() {
    List<String> parts = new ArrayList<>();
    if (guessed()) {
      parts.add(
          "no trip is logged yet, so this rests on a guess made for any angler: log a trip with its"
              + " Style hours before you spend much");
    }
    if (!BuyWords.bought(results.buys(), false).isEmpty()) {
      parts.add(BuyWords.fills(results.buys()));
    }
    List<List<BuyList.Line>> left =
        byItem(results.buys().part(false).stream().filter(line -> !line.bought()).toList());
    if (!left.isEmpty()) {
      int more = left.size() - MOST_BEYOND;
      parts.add(
          "beyond the budget: "
              + left.stream().limit(MOST_BEYOND).map(this::words).collect(Collectors.joining("; "))
              + (more > 0 ? "; and " + Phrase.count(more, "item") + " more" : ""));
    }
    long waiting =
        unpriced(results.buys()).stream().filter(line -> line.fills() && !line.bought()).count();
    if (waiting > 0 && results.buys().lines().stream().anyMatch(BuyList.Line::bought)) {
      parts.add(
          Phrase.count(
              waiting,
              "line only fills a floor and has no price",
              "lines only fill floors and have no price"));
    }
    String text =
        parts.stream()
            .filter(part -> !part.isEmpty())
            .map(part -> Phrase.capital(part) + ".")
            .collect(Collectors.joining(" "));
    return Optional.of(text).filter(words -> !words.isEmpty());
  }

  private boolean guessed() {
    return results.rates().otherLogs() == 0
        && results.findings().stream().anyMatch(one -> one.code() == Code.NO_TRIPS_TO_FIT);
  }

  private static List<List<BuyList.Line>> byItem(List<BuyList.Line> lines) {
    Map<ItemId, List<BuyList.Line>> byItem = new LinkedHashMap<>();
    lines.forEach(line -> byItem.computeIfAbsent(line.item(), item -> new ArrayList<>()).add(line));
    return List.copyOf(byItem.values());
  }

  private String words(List<BuyList.Line> item) {
    return Phrase.text(
        "%s of %s, %s",
        Phrase.packs(
            item.stream().mapToInt(BuyList.Line::packs).sum(),
            item.stream().mapToInt(BuyList.Line::pieces).sum()),
        item.get(0).item().spoken(),
        BuyWords.cost(item)
            .map(money -> Phrase.money(money, results.buys().currency()))
            .orElse("price not known"));
  }

  private void pack() {
    for (PackingList list : results.packing().lists()) {
      int out = list.pieces(Action.TAKE_OUT);
      int in = list.pieces(Action.PUT_IN);
      if (list.boxed() && out + in > 0) {
        step(
            Phrase.text(
                "Pack %s for %s: %s%s%s%s",
                list.event().box(),
                list.event().name(),
                out > 0 ? "take " + Phrase.count(out, "piece") + " out" : "",
                out > 0 && in > 0 ? ", " : "",
                in > 0 ? "put " + Phrase.count(in, "piece") + " in" : "",
                list.shortPieces() > 0 ? "; " + list.shortPieces() + " stay short" : ""),
            Tone.NONE,
            EventPackingSheet.NAME,
            List.of());
      }
    }
  }

  private void move() {
    if (results.stow().refusal().orElse(null) instanceof Refusal.Outside outside) {
      steps.add(
          Step.of(
              "No stow plan: " + StowWords.refusal(outside),
              Tone.BAD,
              Optional.of(outside.places().get(0).positionAt())));
    }
    List<MoveStep> moves = results.stow().steps();
    if (moves.isEmpty()) {
      return;
    }
    step(
        Phrase.text(
            "Move %s for a boat light forward and heavy aft",
            Phrase.count(results.stow().recommendedMoves(), "box", "boxes")),
        Tone.NONE,
        StowPlanSheet.NAME,
        details(
            moves,
            StowWords::instruction,
            step ->
                find(
                    StowPlanSheet.NAME,
                    row -> row instanceof BoxPlan plan && plan.box().equals(step.box()))));
  }

  private void recount() {
    List<Finding> these =
        results.findings().stream().filter(f -> f.code() == Code.RECOUNT).toList();
    if (!these.isEmpty()) {
      step(
          Phrase.text(
              "Recount %s: type what you find under Counted on %s, and post",
              Phrase.count(these.size(), "item"), WhereItIsSheet.NAME),
          Tone.WATCH,
          WhereItIsSheet.NAME,
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

  private static Optional<Cell> place(Finding finding) {
    return Optional.of(finding.at()).filter(at -> !at.sheet().isEmpty());
  }

  private void step(String text, Tone tone, String sheet, List<Block.Line> details) {
    steps.add(new Step(text, tone, Optional.of(Cell.ofSheet(sheet)), details, Optional.empty()));
  }

  private static <T> List<Block.Line> details(
      List<T> all, Function<T, String> words, Function<T, Optional<Cell>> link) {
    return all.stream().map(one -> Step.detail(words.apply(one), link.apply(one))).toList();
  }

  private Optional<Cell> find(String sheetName, Predicate<Object> wanted) {
    return row(sheetName, wanted)
        .flatMap(row -> Layout.cellOf(row.sheet(), row.table(), row.index()))
        .or(() -> Optional.of(Cell.ofSheet(sheetName)));
  }

  /** A row of a table on a sheet. */
  private record ShownRow<R>(ReportSheet sheet, Table<R> table, int index) {
    Optional<Object> shown(String heading, UnitSystem units) {
      return table.shown(table.rows().get(index), heading, units);
    }
  }

  private Optional<ShownRow<?>> row(String sheetName, Predicate<Object> wanted) {
    for (ReportSheet sheet : sheets) {
      for (Block block : sheet.name().equals(sheetName) ? sheet.blocks() : List.<Block>of()) {
        if (block instanceof Block.Rows rows) {
          for (int i = 0; i < rows.table().rows().size(); i++) {
            if (wanted.test(rows.table().rows().get(i))) {
              return Optional.of(new ShownRow<>(sheet, rows.table(), i));
            }
          }
        }
      }
    }
    return Optional.empty();
  }
}
