package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.load.CompartmentLoad;
import sparewell.load.LoadReport;
import sparewell.load.PlateLine;
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
  /** Tab of the sheet. */
  static final String NAME = "Weight by compartment";

  private WeightByCompartmentSheet() {}

  /** The sheet. */
  public static ReportSheet of(LoadReport report, List<IdleStyle> idle, UnitSystem units) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(plateLines(report, units)));
    blocks.add(new Block.Rows(weights(report)));
    Charts.weights(report.compartments()).ifPresent(blocks::add);
    blocks.add(new Block.Text(LoadComparison.lines(report, idle, units)));
    blocks.add(new Block.Rows(loads(report)));
    blocks.add(new Block.Rows(LoadSummary.table(report, units)));
    blocks.add(new Block.Text(Cautions.LINES));
    return new ReportSheet(NAME, answer(report, units), blocks);
  }

  private static String answer(LoadReport report, UnitSystem units) {
    long over = report.compartments().stream().filter(CompartmentLoad::over).count();
    String limits =
        over == 0
            ? "no compartment is over a known limit"
            : over == 1 ? "1 compartment is over a limit" : over + " compartments are over a limit";
    return (report.packs() ? "Once packed, the tackle weighs " : "The tackle weighs ")
        + atLeast(report.tackleKnown())
        + Spoken.mass(report.tackle().weightKg(), units)
        + report
            .tackle()
            .centre()
            .filter(centre -> report.placed())
            .map(centre -> ", centred " + Spoken.length(centre, units) + " ahead of the transom")
            .orElse("")
        + "; "
        + limits
        + (report.placed()
            ? "."
            : ". A compartment is said to stand outside any boat: no centre is given until that is"
                + " mended.");
  }

  private static String atLeast(boolean known) {
    return known ? "" : "at least ";
  }

  private static List<Block.Line> plateLines(LoadReport report, UnitSystem units) {
    List<Block.Line> lines = new ArrayList<>();
    lines.add(Block.Line.heading("Capacity plate"));
    String what = "persons, gear, batteries, fuel, tackle and what else its line counts";
    lines.add(plateLine("Total (" + what + ")", report.plateTotal(), units));
    lines.add(plateLine("Persons", report.platePersons(), units));
    if (report.packs()) {
      lines.add(
          Block.Line.of(
              "Weights are those after today's steps of bringing, buying and packing, with every box"
                  + " where it stands now. As it all lies today the tackle weighs "
                  + atLeast(report.tackleKnown())
                  + Spoken.mass(report.tackleToday(), units)
                  + "."));
    }
    return lines;
  }

  private static Block.Line plateLine(String name, PlateLine line, UnitSystem units) {
    String aboard = atLeast(line.weightKnown()) + Spoken.mass(line.aboard(), units);
    if (line.plate().isEmpty()) {
      return Phrase.strong(
          name
              + ": "
              + aboard
              + " aboard, not checked: no plate figure is given on the Boat sheet.",
          Tone.WATCH);
    }
    String against =
        name + ": " + aboard + " aboard, plate " + Spoken.mass(line.plate().get(), units) + ", ";
    double margin = line.marginKg().orElse(0.0);
    if (line.over()) {
      return Phrase.strong(
          against
              + "OVER by "
              + Spoken.mass(margin, units)
              + ". Take weight out before going afloat.",
          Tone.BAD);
    }
    String left = line.weightKnown() ? "" : "at most ";
    return Phrase.strong(
        against + left + Spoken.mass(margin, units) + " left.",
        line.weightKnown() ? Tone.GOOD : Tone.WATCH);
  }

  private static Table<CompartmentLoad> weights(LoadReport report) {
    List<Column<CompartmentLoad>> columns = new ArrayList<>(columns());
    if (report.packs()) {
      columns.add(
          2,
          Column.<CompartmentLoad>sheetOnly(
                  "Weight today",
                  Format.MASS,
                  "What it holds as everything lies today, as far as known.",
                  CompartmentLoad::today)
              .summed());
    }
    return new Table<>(
        "weight-by-compartment.csv",
        "Tackle by compartment",
        WeightKnown.shown(columns, report.compartments(), CompartmentLoad::weightKnown),
        report.compartments(),
        "No compartment aboard is listed.");
  }

  private static List<Column<CompartmentLoad>> columns() {
    return List.of(
        Column.<CompartmentLoad>of(
                "compartment",
                "Compartment",
                Format.TEXT,
                "A compartment aboard; storage ashore is left out.",
                CompartmentLoad::compartment)
            .linked(row -> Optional.of(row.origin())),
        Column.<CompartmentLoad>of(
                "boxes", "Boxes", Format.COUNT, "Boxes standing in it.", CompartmentLoad::boxes)
            .summed(),
        Column.<CompartmentLoad>of(
                "weight",
                "Weight",
                Format.MASS,
                "Boxes as packed, and loose items, as far as their weight is known.",
                CompartmentLoad::weight)
            .summed(),
        Column.csvOnly("share_pct", Format.PERCENT, CompartmentLoad::sharePercent),
        Column.of(
            "from_transom",
            "From transom",
            Format.LENGTH,
            "Station of the compartment's centre, forward of the transom.",
            CompartmentLoad::fromTransom),
        Column.of(
            "from_centreline",
            "From centreline",
            Format.LENGTH,
            "Side offset of its centre; starboard is positive, port negative.",
            CompartmentLoad::fromCentreline),
        Column.<CompartmentLoad>of(
                "moment",
                "Moment",
                Format.MOMENT,
                "Weight times distance from the transom.",
                row -> row.moment().momentKgM())
            .summed(),
        Column.<CompartmentLoad>of(
                "side_moment",
                "Side moment",
                Format.MOMENT,
                "Weight times distance from the centreline; starboard is positive.",
                row -> row.moment().sideMomentKgM())
            .summed(),
        Column.of(
            "max_load",
            "Max load",
            Format.MASS,
            "Most the compartment may hold, from the Compartments sheet.",
            CompartmentLoad::maxLoad),
        Column.of(
            "volume_used_pct",
            "Volume used",
            Format.PERCENT,
            "Volume of its boxes in percent of the compartment's whole volume; the fill factor"
                + " in Settings is the limit.",
            CompartmentLoad::volumeUsedPercent),
        Column.<CompartmentLoad>of(
                "status",
                "Status",
                Format.TEXT,
                "ok, over load, over volume, or not checked where a limit or size is missing.",
                CompartmentLoad::status)
            .toned(WeightByCompartmentSheet::tone));
  }

  private static Tone tone(CompartmentLoad row) {
    if (row.over()) {
      return Tone.BAD;
    }
    return row.checks().isEmpty() ? Tone.GOOD : Tone.WATCH;
  }

  private static Table<FixedLoad> loads(LoadReport report) {
    List<Column<FixedLoad>> columns =
        List.of(
            Column.<FixedLoad>sheetOnly(
                    "Load", Format.TEXT, "As listed on the Loads sheet.", FixedLoad::name)
                .linked(row -> Optional.of(row.origin())),
            Column.sheetOnly(
                "Kind",
                Format.TEXT,
                "Hull never counts toward the plate; the motor where the plate includes it.",
                row -> row.kind().word()),
            Column.<FixedLoad>sheetOnly("Weight", Format.MASS, "Its weight.", FixedLoad::weight)
                .summed(),
            Column.sheetOnly(
                "From transom",
                Format.LENGTH,
                "Station of its centre, forward of the transom.",
                FixedLoad::fromTransom),
            Column.sheetOnly(
                "From centreline",
                Format.LENGTH,
                "Side offset of its centre; starboard is positive.",
                FixedLoad::fromCentreline),
            Column.<FixedLoad>sheetOnly(
                    "Moment",
                    Format.MOMENT,
                    "Weight times distance from the transom.",
                    row -> moment(row, row.fromTransom()))
                .summed(),
            Column.<FixedLoad>sheetOnly(
                    "Side moment",
                    Format.MOMENT,
                    "Weight times distance from the centreline; starboard is positive.",
                    row -> moment(row, row.fromCentreline()))
                .summed());
    return new Table<>(
        "",
        "What else is aboard",
        columns,
        report.loads(),
        "No loads are listed: the all-up figures are those of the tackle alone.");
  }

  private static Double moment(FixedLoad load, Length arm) {
    return load.weight().in(MassUnit.KILOGRAM) * arm.micrometres() * 1e-6;
  }
}
