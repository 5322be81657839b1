package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.load.CompartmentLoad;
import sparewell.load.LoadReport;
import sparewell.load.LoadReport.PlateLine;
import sparewell.season.FixedLoad;
import sparewell.spares.IdleStyle;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;
import sparewell.units.Length;
import sparewell.units.MassUnit;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Weights by compartment, and the margin to the capacity plate. */
public final class WeightByCompartmentSheet {
  private static final Columns<CompartmentLoad> WEIGHTS = Columns.of("Weight by compartment");
  private static final Columns<FixedLoad> LOADS = Columns.of("Loads");

  static final String NAME = "Weight by compartment";

  private WeightByCompartmentSheet() {}

  public static ReportSheet of(LoadReport report, List<IdleStyle> idle, UnitSystem units) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(plateLines(report, units));
    blocks.add(new Block.Rows(weights(report)));
    blocks.add(LoadComparison.of(report, idle, units));
    blocks.add(new Block.Rows(loads(report)));
    blocks.add(Lines.cautions().block());
    blocks.add(new Block.EndOfPrint());
    Charts.weights(report.compartments()).ifPresent(blocks::add);
    blocks.add(new Block.Rows(LoadSummary.table(report, units)));
    return new ReportSheet(NAME, answer(report, units), blocks);
  }

  private static String answer(LoadReport report, UnitSystem units) {
    long over = report.compartments().stream().filter(CompartmentLoad::over).count();
    String centre =
        report
            .tackle()
            .centre()
            .filter(known -> report.placed())
            .map(known -> ", centred " + Spoken.length(known, units) + " ahead of the transom")
            .orElse("");
    return Phrase.text(
        "%s %s%s%s; %s over %s limit%s.",
        report.packs() ? "Once packed, the tackle weighs" : "The tackle weighs",
        atLeast(report.tackleKnown()),
        Spoken.mass(report.tackle().weightKg(), units),
        centre,
        over == 0 ? "no compartment is" : Phrase.count(over, "compartment is", "compartments are"),
        over == 0 ? "a known" : "a",
        report.placed()
            ? ""
            : ". A compartment is said to stand outside any boat: no centre is given until that is"
                + " mended");
  }

  private static String atLeast(boolean known) {
    return known ? "" : "at least ";
  }

  private static Block plateLines(LoadReport report, UnitSystem units) {
    Lines lines = new Lines();
    lines.heading("Capacity plate");
    String what = "persons, gear, batteries, fuel, tackle and what else its line counts";
    lines.add(plateLine("Total (" + what + ")", report.plateTotal(), units));
    lines.add(plateLine("Persons", report.platePersons(), units));
    if (report.packs()) {
      lines.plain(
          "Weights are those after today's steps of bringing, buying and packing, with every box"
              + " where it stands now. As it all lies today the tackle weighs %s%s.",
          atLeast(report.tackleKnown()), Spoken.mass(report.tackleToday(), units));
    }
    return lines.block();
  }

  private static Block.Line plateLine(String name, PlateLine line, UnitSystem units) {
    String aboard = name + ": " + atLeast(line.weightKnown()) + Spoken.mass(line.aboard(), units);
    if (line.plate().isEmpty()) {
      return Phrase.strong(
          aboard + " aboard, not checked: no plate figure is given on the Boat sheet.", Tone.WATCH);
    }
    String against = aboard + " aboard, plate " + Spoken.mass(line.plate().get(), units);
    String margin = Spoken.mass(line.marginKg().orElse(0.0), units);
    if (line.over()) {
      return Phrase.strong(
          against + ", OVER by " + margin + ". Take weight out before going afloat.", Tone.BAD);
    }
    return line.weightKnown()
        ? Phrase.strong(against + ", " + margin + " left.", Tone.GOOD)
        : Phrase.strong(against + ", at most " + margin + " left.", Tone.WATCH);
  }

  private static Table<CompartmentLoad> weights(LoadReport report) {
    boolean limited = report.compartments().stream().anyMatch(row -> row.maxLoad().isPresent());
    boolean measured =
        report.compartments().stream().anyMatch(row -> row.volumeUsedPercent().isPresent());
    List<Column<CompartmentLoad>> columns =
        List.of(
            WEIGHTS
                .column("compartment", CompartmentLoad::compartment)
                .linked(row -> Optional.of(row.origin())),
            WEIGHTS.column("boxes", CompartmentLoad::boxes),
            WEIGHTS.column("Weight today", CompartmentLoad::today, report.packs()),
            WEIGHTS.column("weight", CompartmentLoad::weight),
            Format.PERCENT.inFile("share_pct", CompartmentLoad::sharePercent),
            WEIGHTS.column("from_transom", row -> row.centre().fromTransom()),
            WEIGHTS.column("from_centreline", row -> row.centre().fromCentreline()),
            WEIGHTS.column("moment", row -> row.moment().momentKgM()),
            WEIGHTS.column("side_moment", row -> row.moment().sideMomentKgM()),
            WEIGHTS.column("max_load", CompartmentLoad::maxLoad, limited),
            WEIGHTS.column("volume_used_pct", CompartmentLoad::volumeUsedPercent, measured),
            WEIGHTS
                .column("status", CompartmentLoad::status)
                .toned(WeightByCompartmentSheet::tone));
    return WEIGHTS.table(
        report.compartments(),
        Columns.withKnown(columns, report.compartments(), CompartmentLoad::weightKnown));
  }

  private static Tone tone(CompartmentLoad row) {
    if (row.over()) {
      return Tone.BAD;
    }
    return row.checks().isEmpty() ? Tone.GOOD : Tone.WATCH;
  }

  private static Table<FixedLoad> loads(LoadReport report) {
    return LOADS.table(
        report.loads(),
        List.of(
            LOADS.column("Load", FixedLoad::name).linked(row -> Optional.of(row.origin())),
            LOADS.column("Kind", row -> row.kind().word()),
            LOADS.column("Weight", FixedLoad::weight),
            LOADS.column("From transom", FixedLoad::fromTransom),
            LOADS.column("From centreline", FixedLoad::fromCentreline),
            LOADS.column("Moment", row -> moment(row, row.fromTransom())),
            LOADS.column("Side moment", row -> moment(row, row.fromCentreline()))));
  }

  private static Double moment(FixedLoad load, Length arm) {
    return load.weight().in(MassUnit.KILOGRAM) * arm.micrometres() * 1e-6;
  }
}
