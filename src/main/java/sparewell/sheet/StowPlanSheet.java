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
