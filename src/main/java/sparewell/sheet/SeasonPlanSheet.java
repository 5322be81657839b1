package sparewell.sheet;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import sparewell.season.Event;
import sparewell.season.Settings;
import sparewell.spares.SeasonPlan;
import sparewell.spares.SeasonPlan.Line;
import sparewell.spares.SeasonPlan.Month;
import sparewell.spares.SeasonPlan.Purchase;
import sparewell.spares.SeasonPlan.Stage;
import sparewell.spares.SeasonPlan.StyleLine;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** All events ahead: what they use, what is left before each, what to order by when. */
public final class SeasonPlanSheet {
  public static final String NAME = "Season plan";
  private static final Columns<Stage> EVENTS = Columns.of("Season plan: events");
  private static final Columns<Purchase> ORDERS = Columns.of("Season plan: orders");
  private static final Columns<Month> MONTHS = Columns.of("Season plan: money");
  private static final Columns<StyleLine> STYLES = Columns.of("Season plan: styles");
  private static final Columns<Line> RISKY = Columns.of("Season plan: risky");
  private static final Columns<Line> LINES = Columns.of("Season plan: items");

  /** Chances under it are left to the file. */
  private static final double WORTH_SHOWING = 0.01;

  /** Expected losses under it would show as 0.00. */
  private static final double LEAST_SHOWN_PIECES = 0.005;

  private SeasonPlanSheet() {}

  public static ReportSheet of(Results results) {
    SeasonPlan plan = results.seasonPlan();
    Settings settings = results.season().settings();
    String currency = settings.currency();
    List<Block> blocks = new ArrayList<>();
    blocks.add(top(plan, settings));
    if (!plan.stages().isEmpty()) {
      blocks.add(new Block.Rows(events(plan, currency)));
      blocks.add(new Block.Rows(purchases(plan, currency)));
    }
    blocks.addAll(AfterEventBlocks.of(results));
    if (!plan.stages().isEmpty()) {
      if (plan.months().size() > 1) {
        blocks.add(new Block.Rows(months(plan, currency)));
      }
      Charts.courses(plan.courses()).ifPresent(blocks::add);
      blocks.add(new Block.EndOfPrint());
      blocks.add(new Block.Rows(styles(plan)));
      blocks.add(new Block.Rows(risky(plan)));
    }
    blocks.add(new Block.FileOnly(LINES.table(plan.lines(), columns())));
    return new ReportSheet(
        NAME, "What the coming events will use, and what to order by when", blocks);
  }

  private static Block top(SeasonPlan plan, Settings settings) {
    Lines lines = new Lines();
    if (plan.stages().isEmpty()) {
      lines.plain("No event lies ahead; add events to the Events sheet to plan for them.");
      return lines.block();
    }
    Stage last = plan.stages().get(plan.stages().size() - 1);
    lines.add(orders(plan, settings));
    late(plan, settings).ifPresent(lines::plain);
    if (last.unboughtProbability().isPresent()) {
      lines.plain(
          "Chance that nothing important runs out through %s: %s if nothing is bought, %s with all"
              + " of it bought in time.",
          last.event().name(),
          Phrase.chance(last.unboughtProbability()),
          Phrase.chance(last.plannedProbability()));
    }
    List<Purchase> floors = plan.forFloors();
    if (!floors.isEmpty()) {
      lines.plain(
          "The first order also has %s for floors alone: counted in the first table, listed on"
              + " Buy list.",
          amount(floors, settings.currency()));
    }
    reach(plan, settings).ifPresent(lines::plain);
    String together =
        plan.stages().stream()
            .filter(Stage::together)
            .map(stage -> stage.event().name())
            .collect(Collectors.joining(", "));
    if (!together.isEmpty()) {
      lines.plain(
          "No free day to restock lies before %s: bought for with the event before.", together);
    }
    lines.note("Season plan", Phrase.number(settings.leadTimeDays()));
    return lines.block();
  }

  private static Block.Line orders(SeasonPlan plan, Settings settings) {
    List<Purchase> all = plan.forLosses();
    if (all.isEmpty()) {
      return Phrase.strong(
          Phrase.text(
              "%s you have lasts through %s ahead with the wanted chance.",
              plan.purchases().isEmpty() ? "Nothing to order: what" : "What",
              plan.stages().size() == 1
                  ? "the event"
                  : plan.stages().size() == 2
                      ? "both events"
                      : "all " + Phrase.count(plan.stages().size(), "event")),
          Tone.GOOD);
    }
    List<Purchase> due = first(plan);
    List<Purchase> later = all.subList(due.size(), all.size());
    return Phrase.strong(
        Phrase.text(
            "Order %s: %s%s%s.",
            day(due, settings),
            wanted(due, settings),
            beyondBuyList(plan, due),
            later.isEmpty()
                ? ""
                : "; later events want "
                    + BuyWords.wares(later, Purchase::packs, Purchase::pieces)
                    + " more"),
        Tone.WATCH);
  }

  /**
   * The next order that losses ask for, in words; beside steps to take only one of today that Buy
   * list does not have.
   */
  public static Optional<String> nextOrder(Results results, boolean alone) {
    SeasonPlan plan = results.seasonPlan();
    Settings settings = results.season().settings();
    List<Purchase> due = first(plan);
    boolean told =
        alone
            ? !due.isEmpty()
            : due.stream()
                .filter(one -> !one.buyBy().isAfter(settings.asOf()))
                .anyMatch(one -> beyond(plan).applyAsInt(one) > 0);
    return told
        ? Optional.of(
            Phrase.text(
                "%s has an order for events ahead: %s, %s%s.",
                NAME,
                day(due, settings),
                wanted(due, settings),
                alone ? "" : beyondBuyList(plan, due)))
        : Optional.empty();
  }

  /** Packs of a purchase that Buy list, made for the next event alone, does not have. */
  private static ToIntFunction<Purchase> beyond(SeasonPlan plan) {
    Event next = plan.stages().get(0).event();
    return one -> one.event().equals(next) ? one.laterPacks() : one.packs();
  }

  private static List<Purchase> first(SeasonPlan plan) {
    List<Purchase> all = plan.forLosses();
    return all.stream().filter(one -> one.buyBy().equals(all.get(0).buyBy())).toList();
  }

  private static String day(List<Purchase> due, Settings settings) {
    LocalDate day = due.get(0).buyBy();
    return day.isAfter(settings.asOf()) ? "by " + day : "today";
  }

  private static String wanted(List<Purchase> due, Settings settings) {
    String events =
        due.stream().map(one -> one.event().name()).distinct().collect(Collectors.joining(" and "));
    return amount(due, settings.currency()) + " for " + events;
  }

  /** Words on the part of the first order that Buy list does not have. */
  private static String beyondBuyList(SeasonPlan plan, List<Purchase> due) {
    Event next = plan.stages().get(0).event();
    ToIntFunction<Purchase> beyond = beyond(plan);
    List<Purchase> these = due.stream().filter(one -> beyond.applyAsInt(one) > 0).toList();
    if (these.isEmpty() || due.stream().noneMatch(one -> one.event().equals(next))) {
      return "";
    }
    boolean all = due.stream().allMatch(one -> beyond.applyAsInt(one) == one.packs());
    String ofIt =
        BuyWords.wares(these, beyond, one -> beyond.applyAsInt(one) * (one.pieces() / one.packs()));
    return "; Buy list, which looks no further than the next event, has "
        + (all ? "none of it" : "all but " + ofIt + " of it");
  }

  /** Says so where even what is ordered today comes after an event. */
  private static Optional<String> late(SeasonPlan plan, Settings settings) {
    LocalDate here = settings.asOf().plusDays((long) Math.ceil(settings.leadTimeDays()));
    String events =
        plan.forLosses().stream()
            .map(Purchase::event)
            .filter(event -> event.date().isBefore(here))
            .distinct()
            .map(event -> event.name() + " (" + event.date() + ")")
            .collect(Collectors.joining(" and "));
    return events.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Phrase.text(
                "An order of today is aboard on %s, too late for %s: buy in a shop.",
                here, events));
  }

  private static String amount(List<Purchase> of, String currency) {
    BigDecimal cost = SeasonPlan.cost(of);
    return BuyWords.wares(of, Purchase::packs, Purchase::pieces)
        + (cost.signum() == 0 ? "" : ", " + Phrase.money(cost, currency) + ",");
  }

  /** Reach of the budget when earlier events are served first, and floors last. */
  private static Optional<String> reach(SeasonPlan plan, Settings settings) {
    if (settings.budget().isEmpty() || plan.forLosses().isEmpty()) {
      return Optional.empty();
    }
    String money = "Your " + Phrase.money(settings.budget().get(), settings.currency());
    BigDecimal left = settings.budget().get();
    String through = "";
    for (Stage stage : plan.stages()) {
      left =
          left.subtract(
              SeasonPlan.cost(
                  plan.forLosses().stream()
                      .filter(one -> one.event().equals(stage.event()))
                      .toList()));
      if (left.signum() < 0) {
        return Optional.of(
            through.isEmpty()
                ? money + " do not pay for all that the first event wants."
                : money + ", spent on earlier events first, pay through " + through + ".");
      }
      through = stage.event().name();
    }
    String rest = Phrase.money(left, settings.currency());
    return Optional.of(
        left.compareTo(SeasonPlan.cost(plan.forFloors())) >= 0
            ? money + " pay for all of it."
            : money
                + " pay for all that expected losses require; "
                + rest
                + " of it remain for floors.");
  }

  private static Table<Stage> events(SeasonPlan plan, String currency) {
    return EVENTS.table(
        plan.stages(),
        List.of(
            EVENTS.column("Event", stage -> stage.event().name()),
            EVENTS.column("Date", stage -> stage.event().date()),
            EVENTS.column("Expected loss", Stage::expectedLossPieces),
            EVENTS.column("Missed if nothing is bought", Stage::missedPieces),
            EVENTS
                .column("Chance if nothing bought", Stage::unboughtProbability)
                .toned(stage -> tone(stage.unboughtProbability().orElse(1))),
            EVENTS.column("Chance with this plan", Stage::plannedProbability),
            EVENTS.column("Packs", Stage::packs),
            EVENTS.column("Cost", Stage::cost),
            EVENTS.column("Order by", Stage::buyBy)),
        currency);
  }

  private static Tone tone(double chance) {
    return chance >= 0.9 ? Tone.GOOD : chance >= 0.5 ? Tone.WATCH : Tone.BAD;
  }

  private static Table<Purchase> purchases(SeasonPlan plan, String currency) {
    return ORDERS.table(
        plan.forLosses(),
        Columns.among(
            List.of(
                ORDERS.column("Order by", Purchase::buyBy),
                ORDERS.column("For", one -> one.event().name())),
            Purchase::item,
            ORDERS.column("Packs", Purchase::packs),
            ORDERS.column("Pieces", Purchase::pieces),
            ORDERS.column("Cost", Purchase::cost)),
        currency);
  }

  private static Table<Month> months(SeasonPlan plan, String currency) {
    boolean unpriced = plan.months().stream().anyMatch(month -> month.unpricedPacks() > 0);
    return MONTHS.table(
        plan.months(),
        List.of(
            MONTHS.column("Month", month -> month.month().toString()),
            MONTHS.column("Packs", Month::packs),
            MONTHS.column("Money", Month::money),
            MONTHS.column("No price", Month::unpricedPacks, unpriced)),
        currency);
  }

  private static Table<StyleLine> styles(SeasonPlan plan) {
    return STYLES.table(
        plan.styles().stream()
            .filter(line -> line.expectedLossPieces() >= LEAST_SHOWN_PIECES)
            .toList(),
        List.of(
            STYLES.column("Event", line -> line.event().name()),
            STYLES.column("Date", line -> line.event().date()),
            STYLES.column("Style", StyleLine::style),
            STYLES.column("Expected loss", StyleLine::expectedLossPieces),
            STYLES.column("Left before", StyleLine::beforePieces)));
  }

  /** Lines that may run out or are to be ordered; a page of safe ones would hide them. */
  private static Table<Line> risky(SeasonPlan plan) {
    List<Line> risky =
        plan.lines().stream()
            .filter(line -> line.buyBy().isPresent() || line.runOutProbability() >= WORTH_SHOWING)
            .toList();
    return RISKY.table(risky, columns(), risky.size(), Phrase.count(plan.lines().size(), "line"));
  }

  private static List<Column<Line>> columns() {
    return Columns.among(
        List.of(
            LINES.column("event", line -> line.event().name()),
            LINES.column("date", line -> line.event().date())),
        Line::item,
        LINES.column("expected_loss", Line::expectedLossPieces),
        LINES.column("aboard_before", Line::beforePieces),
        LINES.column("run_out_chance", Line::runOutProbability),
        LINES.column("buy_by", Line::buyBy));
  }
}
