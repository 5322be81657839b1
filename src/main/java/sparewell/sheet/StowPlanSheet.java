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
import sparewell.load.LoadReport.TradeNote;
import sparewell.stow.BoxPlan;
import sparewell.stow.CurveRow;
import sparewell.stow.Moment;
import sparewell.stow.MoveStep;
import sparewell.stow.StowPlan;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** The stow plan: moves in their order, and the gain of further moves. */
public final class StowPlanSheet {
  private static final Columns<BoxPlan> BOXES = Columns.of("Stow plan");
  private static final Columns<CurveRow> CURVE = Columns.of("Stow plan: moves");
  private static final Columns<TradeNote> NOTES = Columns.of("Stow plan: boxes to swap");

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
    blocks.add(instructions(plan, report));
    report
        .boatPlan()
        .filter(drawn -> !report.compartments().isEmpty())
        .ifPresent(drawn -> blocks.add(BoatDrawing.of(report.compartments(), drawn, units)));
    int moved = (int) plan.boxes().stream().filter(BoxPlan::moves).count();
    blocks.add(new Block.Rows(boxes(plan, moved), "", moved == 0 ? plan.boxes().size() : moved));
    blocks.add(grounds(plan, units));
    blocks.add(new Block.Rows(curve(plan)));
    blocks.add(new Block.Rows(notes(report)));
    return new ReportSheet(NAME, StowWords.answer(plan, report, units), blocks);
  }

  private static Block instructions(StowPlan plan, LoadReport report) {
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
    plan.findings().stream()
        .filter(finding -> LIMITS.contains(finding.code()))
        .forEach(finding -> lines.add(broken(finding)));
    lines.note("Stow plan");
    return lines.block();
  }

  private static Block grounds(StowPlan plan, UnitSystem units) {
    Lines lines = new Lines();
    best(plan, units, lines);
    lines.plain(
        "Side tolerance: the tackle may pull to either side with up to %s.",
        Spoken.moment(plan.sideToleranceKgM(), units));
    plan.reach().ifPresent(reach -> reach(plan, reach, lines));
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

  private static Table<BoxPlan> boxes(StowPlan plan, int moved) {
    boolean reached = plan.boxes().stream().anyMatch(row -> row.reachMinutes().isPresent());
    List<Column<BoxPlan>> columns =
        List.of(
            BOXES.column("box", BoxPlan::box).linked(row -> Optional.of(row.origin())),
            BOXES.column("weight", BoxPlan::weight),
            BOXES.column("from_compartment", BoxPlan::fromCompartment),
            BOXES.column("to_compartment", BoxPlan::toCompartment),
            BOXES.column("move", BoxPlan::moves).toned(row -> row.moves() ? Tone.WATCH : Tone.NONE),
            BOXES.column("step", BoxPlan::step),
            BOXES.column("best_compartment", BoxPlan::bestCompartment),
            BOXES.column("Reach (minutes)", row -> tenths(row.reachMinutes()), reached),
            BOXES.column("reason", row -> row.reason().word()),
            EntryTable.done(BoxPlan::moves));
    return BOXES.table(
        plan.boxes(),
        Columns.withKnown(columns, plan.boxes(), BoxPlan::weightKnown),
        moved == 0 ? "" : " (those that stay are not printed)");
  }

  private static OptionalDouble tenths(OptionalDouble minutes) {
    return minutes.isPresent()
        ? OptionalDouble.of(Math.round(10 * minutes.getAsDouble()) / 10.0)
        : minutes;
  }

  private static Table<CurveRow> curve(StowPlan plan) {
    return CURVE.table(
        plan.curve(),
        List.of(
            CURVE.column("moves", CurveRow::moves),
            CURVE.column("tackle_centre", CurveRow::tackleCentre),
            CURVE.column("gain_pct", CurveRow::gainPercent),
            CURVE.column("gap_pct", CurveRow::gapPercent),
            CURVE
                .column("feasible", CurveRow::feasible)
                .toned(row -> row.feasible() ? Tone.NONE : Tone.BAD)));
  }

  private static Table<TradeNote> notes(LoadReport report) {
    return NOTES.table(
        report.tradeNotes(),
        List.of(
            NOTES.column("Box", TradeNote::box),
            NOTES.column("Mostly", TradeNote::mainStyle),
            NOTES.column("Weight", TradeNote::weight),
            NOTES.column("Stands in", TradeNote::compartment),
            NOTES.column(
                "Note", row -> row.heavyForward() ? "heavy, yet forward" : "light, yet aft"),
            NOTES.column("The plan moves it to", TradeNote::planMovesTo)));
  }
}
