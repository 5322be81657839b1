package sparewell.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import sparewell.season.Settings;
import sparewell.spares.SeasonPlan;
import sparewell.spares.SeasonPlan.Line;
import sparewell.spares.SeasonPlan.Month;
import sparewell.spares.SeasonPlan.Purchase;
import sparewell.spares.SeasonPlan.Stage;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** All events ahead: what they use, what is left before each, what to order by when. */
public final class SeasonPlanSheet {
  public static final String NAME = "Season plan";

  /** Chances under it are left to the file. */
  private static final double WORTH_SHOWING = 0.01;

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
      if (plan.months().size() > 1) {
        blocks.add(new Block.Rows(months(plan, currency)));
      }
      Charts.courses(plan.courses()).ifPresent(blocks::add);
    }
    blocks.addAll(AfterEventBlocks.of(results));
    blocks.add(new Block.Rows(risky(plan)));
    blocks.add(new Block.FileOnly(new Table<>("season-plan.csv", "", columns(), plan.lines(), "")));
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
          "With the first order, %s only fill floors; they are on Buy list.",
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
    lines.small(
        "Starts from what is aboard and ashore now; practice trips in between are not included."
            + " The first order covers all of Buy list, and more where later events draw on the"
            + " same stock: the chance wanted holds over all events together. Lead time: %s days"
            + " (Settings).",
        Phrase.number(settings.leadTimeDays()));
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
                  : "all " + Phrase.count(plan.stages().size(), "event")),
          Tone.GOOD);
    }
    Purchase first = all.get(0);
    List<Purchase> due = all.stream().filter(one -> one.buyBy().equals(first.buyBy())).toList();
    List<Purchase> later = all.subList(due.size(), all.size());
    return Phrase.strong(
        Phrase.text(
            "Order %s: %s for %s%s.",
            first.buyBy().isAfter(settings.asOf()) ? "by " + first.buyBy() : "today",
            amount(due, settings.currency()),
            first.event().name(),
            later.isEmpty() ? "" : "; later events want " + wares(later) + " more"),
        Tone.WATCH);
  }

  private static String wares(List<Purchase> of) {
    int packs = 0;
    int pieces = 0;
    for (Purchase one : of) {
      if (one.packs() == one.pieces()) {
        pieces += one.pieces();
      } else {
        packs += one.packs();
      }
    }
    return Phrase.wares(packs, pieces);
  }

  private static String amount(List<Purchase> of, String currency) {
    BigDecimal cost = cost(of);
    return wares(of) + (cost.signum() == 0 ? "" : ", " + Phrase.money(cost, currency) + ",");
  }

  private static BigDecimal cost(List<Purchase> of) {
    return of.stream()
        .map(Purchase::cost)
        .flatMap(Optional::stream)
        .reduce(BigDecimal.ZERO, BigDecimal::add);
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
              cost(
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
        left.compareTo(cost(plan.forFloors())) >= 0
            ? money + " pay for all of it."
            : money
                + " pay for all that expected losses require; "
                + rest
                + " of it remain for floors.");
  }

  private static Table<Stage> events(SeasonPlan plan, String currency) {
    return Table.onSheet(
        "1. Event by event (" + currency + ")",
        List.of(
            Format.TEXT.onSheet("Event", "Event.", stage -> stage.event().name()),
            Format.DATE.onSheet("Date", "Its first day.", stage -> stage.event().date()),
            Format.NUMBER
                .<Stage>onSheet(
                    "Expected loss",
                    "Pieces of all items expected to be lost at it.",
                    Stage::expectedLossPieces)
                .summed(),
            Format.NUMBER
                .<Stage>onSheet(
                    "Missed if nothing is bought",
                    "Of them, pieces that would not be there any more.",
                    Stage::missedPieces)
                .quiet()
                .summed(),
            Format.PROBABILITY
                .<Stage>onSheet(
                    "Chance if nothing bought",
                    "Chance that nothing important has run out by its end if nothing is bought.",
                    Stage::unboughtProbability)
                .toned(stage -> tone(stage.unboughtProbability().orElse(1))),
            Format.PROBABILITY.onSheet(
                "Chance with this plan",
                "The same with everything below bought in time.",
                Stage::plannedProbability),
            Format.COUNT
                .<Stage>onSheet("Packs", "Packs to order for it.", Stage::packs)
                .quiet()
                .summed(),
            Format.MONEY
                .<Stage>onSheet("Cost", "Money for them, as far as prices are known.", Stage::cost)
                .quiet()
                .summed(),
            Format.DATE.onSheet(
                "Order by",
                "Last day to order; empty where nothing is to be ordered.",
                Stage::buyBy)),
        plan.stages(),
        "No event lies ahead.");
  }

  private static Tone tone(double chance) {
    return chance >= 0.9 ? Tone.GOOD : chance >= 0.5 ? Tone.WATCH : Tone.BAD;
  }

  private static Table<Purchase> purchases(SeasonPlan plan, String currency) {
    return Table.onSheet(
        "2. What to order by when (" + currency + ")",
        ItemColumns.among(
            List.of(
                Format.DATE.onSheet("Order by", "Last day to order.", Purchase::buyBy),
                Format.TEXT.onSheet(
                    "For", "The event it is needed at.", one -> one.event().name())),
            Purchase::item,
            Format.COUNT.<Purchase>onSheet("Packs", "Whole packs.", Purchase::packs).summed(),
            Format.COUNT.<Purchase>onSheet("Pieces", "Pieces in them.", Purchase::pieces).summed(),
            Format.MONEY
                .<Purchase>onSheet(
                    "Cost", "Money for them; empty where the price is not known.", Purchase::cost)
                .summed()),
        plan.forLosses(),
        "The expected losses call for no order.");
  }

  private static Table<Month> months(SeasonPlan plan, String currency) {
    List<Column<Month>> columns =
        new ArrayList<>(
            List.of(
                Format.TEXT.onSheet(
                    "Month", "Month to order in.", month -> month.month().toString()),
                Format.COUNT.<Month>onSheet("Packs", "Packs to order.", Month::packs).summed(),
                Format.MONEY
                    .<Month>onSheet("Money", "Money for those with a price.", Month::money)
                    .summed()));
    if (plan.months().stream().anyMatch(month -> month.unpricedPacks() > 0)) {
      columns.add(
          Format.COUNT
              .<Month>onSheet("No price", "Packs whose price is not known.", Month::unpricedPacks)
              .quiet());
    }
    return Table.onSheet(
        "3. Money by month (" + currency + ")", columns, plan.months(), "No money is needed.");
  }

  /** Lines that may run out or are to be ordered; a page of safe ones would hide them. */
  private static Table<Line> risky(SeasonPlan plan) {
    List<Line> risky =
        plan.lines().stream()
            .filter(line -> line.buyBy().isPresent() || line.runOutProbability() >= WORTH_SHOWING)
            .toList();
    return Table.onSheet(
        "What may run out, if nothing were bought ("
            + risky.size()
            + " of "
            + Phrase.count(plan.lines().size(), "line")
            + " of season-plan.csv)",
        columns(),
        risky,
        plan.lines().isEmpty()
            ? "No event lies ahead, or none uses what is in stock."
            : "Nothing: every item lasts through every event, but for chances under 1 %.");
  }

  private static List<Column<Line>> columns() {
    return ItemColumns.among(
        List.of(
            Format.TEXT.column("event", "Event", "Event.", line -> line.event().name()),
            Format.DATE.column("date", "Date", "Its first day.", line -> line.event().date())),
        Line::item,
        Format.NUMBER.column(
            "expected_loss",
            "Expected loss",
            "Pieces expected to be lost at the event.",
            Line::expectedLossPieces),
        Format.NUMBER.column(
            "aboard_before",
            "Left before",
            "Pieces expected to be left before the event, all that lies ashore brought aboard.",
            Line::beforePieces),
        Format.PROBABILITY
            .<Line>column(
                "run_out_chance",
                "Run-out chance",
                "Chance that it has run out by the end of the event.",
                Line::runOutProbability)
            .quiet(),
        Format.DATE.column(
            "buy_by",
            "Order by",
            "Last day to order more of it for this event; empty where there is enough.",
            Line::buyBy));
  }
}
