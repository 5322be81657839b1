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
  static final String NAME = "Weight by compartment";

  private WeightByCompartmentSheet() {}

  public static ReportSheet of(LoadReport report, List<IdleStyle> idle, UnitSystem units) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(plateLines(report, units));
    blocks.add(new Block.Rows(weights(report)));
    Charts.weights(report.compartments()).ifPresent(blocks::add);
    blocks.add(LoadComparison.of(report, idle, units));
    blocks.add(new Block.Rows(loads(report)));
    blocks.add(new Block.Rows(LoadSummary.table(report, units)));
    blocks.add(Cautions.lines().block());
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
    List<Column<CompartmentLoad>> columns = new ArrayList<>(columns());
    if (report.packs()) {
      columns.add(
          2,
          Format.MASS
              .<CompartmentLoad>onSheet(
                  "Weight today",
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
        Format.TEXT
            .<CompartmentLoad>column(
                "compartment",
                "Compartment",
                "A compartment aboard; storage ashore is left out.",
                CompartmentLoad::compartment)
            .linked(row -> Optional.of(row.origin())),
        Format.COUNT
            .<CompartmentLoad>column(
                "boxes", "Boxes", "Boxes standing in it.", CompartmentLoad::boxes)
            .summed(),
        Format.MASS
            .<CompartmentLoad>column(
                "weight",
                "Weight",
                "Boxes as packed, and loose items, as far as their weight is known.",
                CompartmentLoad::weight)
            .summed(),
        Format.PERCENT.inFile("share_pct", CompartmentLoad::sharePercent),
        Format.LENGTH.column(
            "from_transom",
            "From transom",
            "Station of the compartment's centre, forward of the transom.",
            CompartmentLoad::fromTransom),
        Format.LENGTH.column(
            "from_centreline",
            "From centreline",
            "Side offset of its centre; starboard is positive, port negative.",
            CompartmentLoad::fromCentreline),
        Format.MOMENT
            .<CompartmentLoad>column(
                "moment",
                "Moment",
                "Weight times distance from the transom.",
                row -> row.moment().momentKgM())
            .summed(),
        Format.MOMENT
            .<CompartmentLoad>column(
                "side_moment",
                "Side moment",
                "Weight times distance from the centreline; starboard is positive.",
                row -> row.moment().sideMomentKgM())
            .summed(),
        Format.MASS.column(
            "max_load",
            "Max load",
            "Most the compartment may hold, from the Compartments sheet.",
            CompartmentLoad::maxLoad),
        Format.PERCENT.column(
            "volume_used_pct",
            "Volume used",
            "Volume of its boxes in percent of the compartment's whole volume; the fill factor"
                + " in Settings is the limit.",
            CompartmentLoad::volumeUsedPercent),
        Format.TEXT
            .<CompartmentLoad>column(
                "status",
                "Status",
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
            Format.TEXT
                .<FixedLoad>onSheet("Load", "As listed on the Loads sheet.", FixedLoad::name)
                .linked(row -> Optional.of(row.origin())),
            Format.TEXT.onSheet(
                "Kind",
                "Hull never counts toward the plate; the motor where the plate includes it.",
                row -> row.kind().word()),
            Format.MASS.<FixedLoad>onSheet("Weight", "Its weight.", FixedLoad::weight).summed(),
            Format.LENGTH.onSheet(
                "From transom",
                "Station of its centre, forward of the transom.",
                FixedLoad::fromTransom),
            Format.LENGTH.onSheet(
                "From centreline",
                "Side offset of its centre; starboard is positive.",
                FixedLoad::fromCentreline),
            Format.MOMENT
                .<FixedLoad>onSheet(
                    "Moment",
                    "Weight times distance from the transom.",
                    row -> moment(row, row.fromTransom()))
                .summed(),
            Format.MOMENT
                .<FixedLoad>onSheet(
                    "Side moment",
                    "Weight times distance from the centreline; starboard is positive.",
                    row -> moment(row, row.fromCentreline()))
                .summed());
    return Table.onSheet(
        "What else is aboard",
        columns,
        report.loads(),
        "No loads are listed: the all-up figures are those of the tackle alone.");
  }

  private static Double moment(FixedLoad load, Length arm) {
    return load.weight().in(MassUnit.KILOGRAM) * arm.micrometres() * 1e-6;
  }
}
