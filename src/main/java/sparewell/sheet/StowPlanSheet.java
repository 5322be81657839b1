package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.load.LoadReport;
import sparewell.load.TradeNote;
import sparewell.stow.BoxPlan;
import sparewell.stow.CurveRow;
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
  /** Tab of the sheet. */
  static final String NAME = "Stow plan";

  private StowPlanSheet() {}

  /** The sheet. */
  public static ReportSheet of(StowPlan plan, LoadReport report, UnitSystem units) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(instructions(plan, report, units)));
    if (!report.boatPlan().compartments().isEmpty()) {
      blocks.add(BoatDrawing.of(report.boatPlan(), units));
    }
    blocks.add(new Block.Rows(boxes(plan)));
    blocks.add(new Block.Rows(curve(plan)));
    blocks.add(new Block.Rows(notes(report)));
    return new ReportSheet(NAME, StowWords.answer(plan, report, units), blocks);
  }

  private static List<Block.Line> instructions(StowPlan plan, LoadReport report, UnitSystem units) {
    List<Block.Line> lines = new ArrayList<>();
    if (!plan.steps().isEmpty()) {
      lines.add(
          Block.Line.heading(
              "Do this, in this order" + (report.packs() ? ", once the boxes are packed" : "")));
      for (MoveStep step : plan.steps()) {
        lines.add(Phrase.strong(StowWords.instruction(step), Tone.NONE));
      }
    }
    if (plan.steps().stream().anyMatch(MoveStep::overSide)) {
      lines.add(
          Block.Line.of(
              "Between the steps the tackle pulls to a side more than it may when all is done: move"
                  + " the boxes on the trailer or at the dock."));
    }
    plan.best()
        .flatMap(best -> best.centre())
        .filter(centre -> plan.bestMoves() > plan.recommendedMoves())
        .ifPresent(
            centre ->
                lines.add(
                    Block.Line.of(
                        "The best plan found moves "
                            + plan.bestMoves()
                            + " boxes and brings the centre to "
                            + Spoken.length(centre, units)
                            + "; "
                            + StowWords.bestProof(plan))));
    lines.add(
        Block.Line.of(
            "Side tolerance: the tackle may pull to either side with up to "
                + Spoken.moment(plan.sideToleranceKgM(), units)
                + "."));
    plan.reach()
        .ifPresent(
            reach ->
                lines.add(
                    Block.Line.of(
                        String.format(
                            Locale.ROOT,
                            "Reach: boxes not at hand cost %s a day%s. An assumption:"
                                + " three times an hour thrown, half a minute each. 'Reach worth'"
                                + " in Settings weighs it against the centre.",
                            StowWords.minutes(reach.nowMinutes()),
                            plan.steps().isEmpty()
                                ? ""
                                : ", "
                                    + StowWords.minutes(reach.plannedMinutes())
                                    + " with the plan"))));
    for (Finding finding : plan.findings()) {
      if (limit(finding.code())) {
        lines.add(
            new Block.Line(
                Phrase.capital(finding.message()) + ".",
                Block.Weight.PLAIN,
                finding.severity() == Severity.ERROR ? Tone.BAD : Tone.WATCH,
                Optional.of(finding.at()).filter(at -> !at.sheet().isEmpty())));
      }
    }
    lines.add(
        Phrase.small(
            "The capacity plate and the maker's manual are the limit. Stowing changes handling: try"
                + " a new layout at low speed first."));
    return lines;
  }

  private static boolean limit(Code code) {
    return switch (code) {
      case COMPARTMENT_OVER_LOAD,
          COMPARTMENT_OVER_VOLUME,
          SIDE_OVER_TOLERANCE,
          SIDE_OVER_USUAL,
          BOX_DOES_NOT_FIT,
          BOX_NOT_AT_HAND,
          BOX_FITS_NOWHERE,
          FIXED_BOX_AGAINST_LIMIT,
          FIXED_OVER_LIMIT ->
          true;
      default -> false;
    };
  }

  private static Table<BoxPlan> boxes(StowPlan plan) {
    List<Column<BoxPlan>> columns =
        List.of(
            Column.<BoxPlan>of("box", "Box", Format.TEXT, "A box aboard.", BoxPlan::box)
                .linked(row -> Optional.of(row.origin())),
            Column.of(
                "weight",
                "Weight",
                Format.MASS,
                "Box and contents, as far as their weight is known.",
                BoxPlan::weight),
            Column.of(
                "from_compartment",
                "From",
                Format.TEXT,
                "Where it stands now.",
                BoxPlan::fromCompartment),
            Column.of(
                "to_compartment",
                "To",
                Format.TEXT,
                "Where the recommended plan puts it.",
                BoxPlan::toCompartment),
            Column.<BoxPlan>of(
                    "move",
                    "Move",
                    Format.YES_NO,
                    "Whether the recommended plan moves it.",
                    BoxPlan::moves)
                .toned(row -> row.moves() ? Tone.WATCH : Tone.NONE),
            Column.of(
                "step",
                "Step",
                Format.COUNT,
                "Order of its move, so that there is room when it is its turn.",
                BoxPlan::step),
            Column.of(
                "best_compartment",
                "Best place",
                Format.TEXT,
                "Where the best plan found would put it, whatever the number of moves.",
                BoxPlan::bestCompartment),
            Column.sheetOnly(
                "Reach (minutes)",
                Format.NUMBER,
                "What reaching for it costs a day if it does not stand at hand: half a minute, three"
                    + " times an hour that its lures are thrown (an assumption).",
                row -> tenths(row.reachMinutes())),
            Column.of(
                "reason",
                "Reason",
                Format.TEXT,
                "Why it is moved or not.",
                row -> row.reason().word()),
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
            Column.of("moves", "Moves", Format.COUNT, "Boxes moved at most.", CurveRow::moves),
            Column.of(
                "tackle_centre",
                "Tackle centre",
                Format.LENGTH,
                "Centre of the tackle forward of the transom, in the best plan found with so many"
                    + " moves.",
                CurveRow::tackleCentre),
            Column.of(
                "gain_pct",
                "Gain",
                Format.PERCENT,
                "Share of the way from the centre now to the best centre, in percent.",
                CurveRow::gainPercent),
            Column.of(
                "gap_pct",
                "A better plan saves at most (%)",
                Format.NUMBER,
                "By how much a better plan with so many moves could at most bring the tackle further"
                    + " aft, in percent of its distance from the transom; 0 = proven best.",
                CurveRow::gapPercent),
            Column.<CurveRow>of(
                    "feasible",
                    "Within limits",
                    Format.YES_NO,
                    "Whether a plan with so many moves that keeps every limit was found.",
                    CurveRow::feasible)
                .toned(row -> row.feasible() ? Tone.NONE : Tone.BAD));
    return new Table<>(
        "stow-moves.csv", "What further moves would gain", columns, plan.curve(), "No moves.");
  }

  private static Table<TradeNote> notes(LoadReport report) {
    List<Column<TradeNote>> columns =
        List.of(
            Column.sheetOnly("Box", Format.TEXT, "A box aboard.", TradeNote::box),
            Column.sheetOnly(
                "Mostly", Format.TEXT, "The style that weighs most in it.", TradeNote::mainStyle),
            Column.sheetOnly("Weight", Format.MASS, "Box and contents.", TradeNote::weight),
            Column.sheetOnly("Stands in", Format.TEXT, "Where it stands.", TradeNote::compartment),
            Column.sheetOnly(
                "Note",
                Format.TEXT,
                "Heavier or lighter than the median box, ahead of or behind the middle between the"
                    + " hindmost and the foremost compartment.",
                row -> row.heavyForward() ? "heavy, yet forward" : "light, yet aft"),
            Column.sheetOnly(
                "The plan moves it to",
                Format.TEXT,
                "Empty where the plan leaves it.",
                TradeNote::planMovesTo));
    return new Table<>(
        "",
        "Against 'light forward, heavy aft' (common practice, no source)",
        columns,
        report.tradeNotes(),
        "No box stands against it.");
  }
}
