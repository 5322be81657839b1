package sparewell.sheet;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.load.LoadReport;
import sparewell.load.TradeNote;
import sparewell.stow.BoxPlan;
import sparewell.stow.CurveRow;
import sparewell.stow.Moment;
import sparewell.stow.MoveStep;
import sparewell.stow.StowPlan;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** The stow plan: moves in their order, and the gain of further moves. */
public final class StowPlanSheet {
  static final String NAME = "Stow plan";

  /** Findings that stand on the sheet itself. */
  private static final Set<Code> LIMITS =
      EnumSet.of(
          Code.COMPARTMENT_OVER_LOAD,
          Code.COMPARTMENT_OVER_VOLUME,
          Code.SIDE_OVER_TOLERANCE,
          Code.SIDE_OVER_USUAL,
          Code.BOX_DOES_NOT_FIT,
          Code.BOX_NOT_AT_HAND,
          Code.BOX_FITS_NOWHERE,
          Code.FIXED_BOX_AGAINST_LIMIT,
          Code.FIXED_OVER_LIMIT);

  private StowPlanSheet() {}

  public static ReportSheet of(StowPlan plan, LoadReport report, UnitSystem units) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(instructions(plan, report, units));
    if (!report.boatPlan().compartments().isEmpty()) {
      blocks.add(BoatDrawing.of(report.boatPlan(), units));
    }
    blocks.add(new Block.Rows(boxes(plan)));
    blocks.add(new Block.Rows(curve(plan)));
    blocks.add(new Block.Rows(notes(report)));
    return new ReportSheet(NAME, StowWords.answer(plan, report, units), blocks);
  }

  private static Block instructions(StowPlan plan, LoadReport report, UnitSystem units) {
    Lines lines = new Lines();
    if (!plan.steps().isEmpty()) {
      lines.heading(
          "Do this, in this order" + (report.packs() ? ", once the boxes are packed" : ""));
      plan.steps().forEach(step -> lines.strong(Tone.NONE, StowWords.instruction(step)));
    }
    if (plan.steps().stream().anyMatch(MoveStep::overSide)) {
      lines.plain(
          "Between the steps the tackle pulls to a side more than it may when all is done: move"
              + " the boxes on the trailer or at the dock.");
    }
    best(plan, units, lines);
    lines.plain(
        "Side tolerance: the tackle may pull to either side with up to %s.",
        Spoken.moment(plan.sideToleranceKgM(), units));
    plan.reach().ifPresent(reach -> reach(plan, reach, lines));
    plan.findings().stream()
        .filter(finding -> LIMITS.contains(finding.code()))
        .forEach(finding -> lines.add(broken(finding)));
    lines.small(
        "The capacity plate and the maker's manual are the limit. Stowing changes handling: try"
            + " a new layout at low speed first.");
    return lines.block();
  }

  private static void best(StowPlan plan, UnitSystem units, Lines lines) {
    if (plan.bestMoves() > plan.recommendedMoves()) {
      plan.best()
          .flatMap(Moment::centre)
          .ifPresent(
              centre ->
                  lines.plain(
                      "The best plan found moves %d boxes and brings the centre to %s; %s",
                      plan.bestMoves(), Spoken.length(centre, units), StowWords.bestProof(plan)));
    }
  }

  private static void reach(StowPlan plan, StowPlan.ReachChange reach, Lines lines) {
    String planned =
        plan.steps().isEmpty()
            ? ""
            : ", " + StowWords.minutes(reach.plannedMinutes()) + " with the plan";
    lines.plain(
        "Reach: boxes not at hand cost %s a day%s. An assumption: three times an hour thrown, half"
            + " a minute each. 'Reach worth' in Settings weighs it against the centre.",
        StowWords.minutes(reach.nowMinutes()), planned);
  }

  private static Block.Line broken(Finding finding) {
    return new Block.Line(
        Phrase.capital(finding.message()) + ".",
        Block.Weight.PLAIN,
        finding.severity() == Severity.ERROR ? Tone.BAD : Tone.WATCH,
        Optional.of(finding.at()).filter(at -> !at.sheet().isEmpty()));
  }

  private static Table<BoxPlan> boxes(StowPlan plan) {
    List<Column<BoxPlan>> columns =
        List.of(
            Format.TEXT
                .<BoxPlan>column("box", "Box", "A box aboard.", BoxPlan::box)
                .linked(row -> Optional.of(row.origin())),
            Format.MASS.column(
                "weight",
                "Weight",
                "Box and contents, as far as their weight is known.",
                BoxPlan::weight),
            Format.TEXT.column(
                "from_compartment", "From", "Where it stands now.", BoxPlan::fromCompartment),
            Format.TEXT.column(
                "to_compartment",
                "To",
                "Where the recommended plan puts it.",
                BoxPlan::toCompartment),
            Format.YES_NO
                .<BoxPlan>column(
                    "move", "Move", "Whether the recommended plan moves it.", BoxPlan::moves)
                .toned(row -> row.moves() ? Tone.WATCH : Tone.NONE),
            Format.COUNT.column(
                "step",
                "Step",
                "Order of its move, so that there is room when it is its turn.",
                BoxPlan::step),
            Format.TEXT.column(
                "best_compartment",
                "Best place",
                "Where the best plan found would put it, whatever the number of moves.",
                BoxPlan::bestCompartment),
            Format.NUMBER.onSheet(
                "Reach (minutes)",
                "Minutes a day spent reaching for it where it does not stand at hand: half a minute, three"
                    + " times an hour that its lures are thrown (an assumption).",
                row -> tenths(row.reachMinutes())),
            Format.TEXT.column(
                "reason", "Reason", "Why it is moved or not.", row -> row.reason().word()),
            EntryTable.done(BoxPlan::moves));
    return new Table<>(
        "stow-plan.csv",
        "Every box aboard",
        WeightKnown.shown(columns, plan.boxes(), BoxPlan::weightKnown),
        plan.boxes(),
        "No box is aboard.");
  }

  private static OptionalDouble tenths(OptionalDouble minutes) {
    return minutes.isPresent()
        ? OptionalDouble.of(Math.round(10 * minutes.getAsDouble()) / 10.0)
        : minutes;
  }

  private static Table<CurveRow> curve(StowPlan plan) {
    List<Column<CurveRow>> columns =
        List.of(
            Format.COUNT.column("moves", "Moves", "Boxes moved at most.", CurveRow::moves),
            Format.LENGTH.column(
                "tackle_centre",
                "Tackle centre",
                "Centre of the tackle forward of the transom, in the best plan found with so many"
                    + " moves.",
                CurveRow::tackleCentre),
            Format.PERCENT.column(
                "gain_pct",
                "Gain",
                "Share of the way from the centre now to the best centre, in percent.",
                CurveRow::gainPercent),
            Format.NUMBER.column(
                "gap_pct",
                "A better plan saves at most (%)",
                "By how much a better plan with so many moves could at most bring the tackle further"
                    + " aft, in percent of its distance from the transom; 0 = proven best.",
                CurveRow::gapPercent),
            Format.YES_NO
                .<CurveRow>column(
                    "feasible",
                    "Within limits",
                    "Whether a plan with so many moves that keeps every limit was found.",
                    CurveRow::feasible)
                .toned(row -> row.feasible() ? Tone.NONE : Tone.BAD));
    return new Table<>(
        "stow-moves.csv", "What further moves would gain", columns, plan.curve(), "No moves.");
  }

  private static Table<TradeNote> notes(LoadReport report) {
    List<Column<TradeNote>> columns =
        List.of(
            Format.TEXT.onSheet("Box", "A box aboard.", TradeNote::box),
            Format.TEXT.onSheet(
                "Mostly", "The style that weighs most in it.", TradeNote::mainStyle),
            Format.MASS.onSheet("Weight", "Box and contents.", TradeNote::weight),
            Format.TEXT.onSheet("Stands in", "Where it stands.", TradeNote::compartment),
            Format.TEXT.onSheet(
                "Note",
                "Heavier or lighter than the median box, ahead of or behind the middle between the"
                    + " hindmost and the foremost compartment.",
                row -> row.heavyForward() ? "heavy, yet forward" : "light, yet aft"),
            Format.TEXT.onSheet(
                "The plan moves it to", "Empty where the plan leaves it.", TradeNote::planMovesTo));
    return Table.onSheet(
        "Against 'light forward, heavy aft' (common practice, no source)",
        columns,
        report.tradeNotes(),
        "No box stands against it.");
  }
}
