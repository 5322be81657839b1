package sparewell.render;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Cell;
import sparewell.table.Block;
import sparewell.table.Chart;
import sparewell.table.Column;
import sparewell.table.Drawing;
import sparewell.table.Format;
import sparewell.table.LabelGrid;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;

/** Made-up sheets that show every block; {@code main} writes them to a file to be looked at. */
final class Sample {
  private Sample() {}

  record Shelf(
      String name,
      String note,
      int pieces,
      Mass mass,
      double chance,
      OptionalDouble ratio,
      BigDecimal cost,
      LocalDate checked,
      boolean full) {}

  static final List<Shelf> SHELVES = shelves(40);

  static final Table<Shelf> TABLE =
      new Table<>(
          "shelves.csv",
          "Shelves, fullest first",
          List.of(
              Format.TEXT
                  .column("shelf", "Shelf", "Name of the shelf.", Shelf::name)
                  .linked(row -> Optional.of(new Cell("Store", row.pieces() + 1, 2))),
              Format.COUNT
                  .column("pieces", "Pieces", "Whole pieces on it.", Shelf::pieces)
                  .summed(),
              Format.MASS
                  .column("mass", "Weight", "Weight of all pieces on it.", Shelf::mass)
                  .summed(),
              Format.PROBABILITY
                  .column(
                      "run_out_chance",
                      "Chance of running out",
                      "Chance that all pieces are used up before the next delivery; under 5 % is"
                          + " what was asked for.",
                      Shelf::chance)
                  .toned(Sample::tone),
              Format.NUMBER.column("ratio", "Ratio", "Used to delivered.", Shelf::ratio),
              Format.MONEY.column("cost", "Cost", "Cost of all pieces.", Shelf::cost).summed(),
              Format.DATE.column("checked", "Last checked", "Day it was seen.", Shelf::checked),
              Format.YES_NO.column("full", "Full", "Whether more would fit.", Shelf::full),
              Format.TEXT.onSheet("Note", "Anything else.", Shelf::note)),
          SHELVES,
          "There are no shelves.");

  static final Table<Shelf> EMPTY =
      new Table<>("", "Shelves to clear", TABLE.columns(), List.of(), "No shelf needs clearing.");

  private static Tone tone(Shelf shelf) {
    if (shelf.chance() > 0.3) {
      return Tone.BAD;
    }
    return shelf.chance() > 0.1 ? Tone.WATCH : Tone.GOOD;
  }

  private static List<Shelf> shelves(int count) {
    List<Shelf> shelves = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      shelves.add(
          new Shelf(
              "Shelf " + (char) ('A' + i % 26) + (i / 26 + 1),
              i % 7 == 3
                  ? "=SUM(A1:A3) is text here, and this is a long note that goes on over more"
                      + " than one line of its cell"
                  : i % 5 == 0 ? "top row" : "",
              3 + i * 7 % 50,
              Mass.of(0.37 * (i + 1), MassUnit.POUND),
              i == 5 ? 1.234567e-9 : i % 9 * 0.05,
              i % 4 == 0 ? OptionalDouble.empty() : OptionalDouble.of(1 / (i + 0.7)),
              BigDecimal.valueOf(1299L * (i + 1), 2),
              LocalDate.of(2026, 1, 1).plusDays(i * 3L),
              i % 2 == 0));
    }
    return shelves;
  }

  static List<ReportSheet> sheets() {
    Block.Line todo =
        new Block.Line(
            "Watch: 4 shelves run low; the lowest is shelf C1",
            Block.Weight.STRONG,
            Tone.WATCH,
            Optional.of(new Cell("Shelves", 12, 1)));
    Block.Line good =
        new Block.Line("Good: nothing is overdue", Block.Weight.PLAIN, Tone.GOOD, Optional.empty());
    Block.Line bad =
        new Block.Line(
            "Mend: store cell B7 is not a number; the row was left out. Put a number there and run"
                + " again; until then the sums below leave this shelf out, which makes the total"
                + " too low by what stands on it.",
            Block.Weight.PLAIN,
            Tone.BAD,
            Optional.of(new Cell("Store", 7, 2)));
    Block.Line small =
        new Block.Line(
            "Figures are made up to show every kind of block.",
            Block.Weight.SMALL,
            Tone.NONE,
            Optional.empty());
    return List.of(
        new ReportSheet(
            "Front",
            "What to do now, in this order",
            List.of(
                new Block.Text(
                    List.of(
                        Block.Line.heading("To do"),
                        todo,
                        good,
                        bad,
                        Block.Line.of("Plain."),
                        small)),
                new Block.Rows(EMPTY))),
        new ReportSheet(
            "Shelves",
            "How full each shelf is, and which runs out first",
            List.of(
                new Block.Text(List.of(Block.Line.of("Sort and filter by the arrows."))),
                new Block.Rows(TABLE))),
        new ReportSheet("Charts", "What the figures look like", charts()),
        new ReportSheet("Plan", "Where the shelves stand", List.of(plan())),
        new ReportSheet(
            "Labels",
            "Labels to print; cut along the dashes",
            List.of(labels(), new Block.Rows(CODES))),
        forecast());
  }

  record Day(LocalDate date, double mean) {}

  /** A chart of each kind for forecasts, in a sheet in large print with a table in view. */
  private static ReportSheet forecast() {
    List<Day> days = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      days.add(new Day(LocalDate.of(2026, 4, 3).plusDays(i * i * 3L), 14 - 1.7 * i));
    }
    List<Column<Day>> columns = new ArrayList<>();
    columns.add(Format.DATE.onSheet("Day", "", Day::date));
    List<Chart.Series> series = new ArrayList<>();
    for (int i = 1; i <= 5; i++) {
      double times = 1 + 0.4 * i;
      String name = "Thing " + i;
      columns.add(Format.NUMBER.onSheet(name, "", day -> day.mean() * times));
      columns.add(Format.NUMBER.onSheet(name + " low", "", day -> day.mean() * times * 0.6));
      columns.add(Format.NUMBER.onSheet(name + " high", "", day -> day.mean() * times + 5));
      series.add(Chart.Series.of(name).between(name + " low", name + " high"));
    }
    Table<Day> stock = new Table<>("", "", columns, days, "");
    Table<Rate> few =
        new Table<>("", "Store by store", RATES.columns(), RATES.rows().subList(0, 9), "");
    return new ReportSheet(
        "Forecast",
        "What is left by then",
        List.of(
            new Block.Rows(few),
            new Chart(
                Chart.Kind.BANDS,
                "What is left, with 90 % bands",
                "",
                "Pieces",
                "Where a band meets the ground, the thing may be gone by then.",
                stock,
                "Day",
                series)),
        true);
  }

  record Rate(
      String name, double rate, double low, double high, OptionalDouble raw, double place) {}

  record Month(String month, int broken, int lost, int worn, int other) {}

  record Count(int pieces, double first, double second, double third) {}

  record Code(String code, String colour) {}

  static final Table<Code> CODES =
      new Table<>(
          "",
          "Codes of colours",
          List.of(
              Format.TEXT.onSheet("Code", "Short code.", Code::code),
              Format.TEXT.onSheet("Colour", "What it stands for.", Code::colour)),
          List.of(new Code("GY", "grey"), new Code("BL", "blue")),
          "");

  static final Table<Rate> RATES =
      new Table<>(
          "",
          "Rates",
          List.of(
              Format.TEXT.onSheet("Thing", "Its name.", Rate::name),
              Format.NUMBER.onSheet("Rate", "Uses.", Rate::rate),
              Format.NUMBER.onSheet("Low", "Low end.", Rate::low),
              Format.NUMBER.onSheet("High", "High end.", Rate::high),
              Format.NUMBER.onSheet("Raw", "As counted.", Rate::raw),
              Format.NUMBER.onSheet("Place", "Where it is.", Rate::place)),
          rates(18),
          "No rates.");

  private static List<Rate> rates(int count) {
    List<Rate> rates = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double rate = 3.2 / (i + 1);
      rates.add(
          new Rate(
              "Thing number " + (i + 1),
              rate,
              rate * 0.6,
              rate * 1.7 + 0.05,
              i == 4 ? OptionalDouble.empty() : OptionalDouble.of(rate * (i % 2 == 0 ? 1.3 : 0.6)),
              17.5 * (i % 6)));
    }
    return rates;
  }

  private static List<Block> charts() {
    List<Chart.Series> rateSeries =
        List.of(
            Chart.Series.of("Rate").between("Low", "High"),
            Chart.Series.of("Raw").as(Chart.Mark.MARKERS));
    String see = "Where a bar's whiskers are long, few uses are known: trust it less.";
    List<Month> months = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      months.add(
          new Month(String.format("2025-%02d", i + 1), i % 4, 5 - i % 5, i % 3, (i * 7) % 4));
    }
    Table<Month> monthly =
        new Table<>(
            "",
            "",
            List.of(
                Format.TEXT.onSheet("Month", "", Month::month),
                Format.COUNT.onSheet("Broken", "", Month::broken),
                Format.COUNT.onSheet("Lost", "", Month::lost),
                Format.COUNT.onSheet("Worn", "", Month::worn),
                Format.COUNT.onSheet("Other", "", Month::other)),
            months,
            "");
    List<Count> counts = new ArrayList<>();
    for (int i = 0; i <= 12; i++) {
      counts.add(new Count(i, Math.exp(-i / 3.0), Math.exp(-i / 5.0), 1 - i * i / 160.0));
    }
    Table<Count> chances =
        new Table<>(
            "",
            "",
            List.of(
                Format.COUNT.onSheet("Pieces", "", Count::pieces),
                Format.PROBABILITY.onSheet("Thing A", "", Count::first),
                Format.PROBABILITY.onSheet("Thing B", "", Count::second),
                Format.PROBABILITY.onSheet("Thing C", "", Count::third)),
            counts,
            "");
    return List.of(
        new Chart(
            Chart.Kind.BAR, "Uses by thing", "", "Uses in 10 h", see, RATES, "Thing", rateSeries),
        new Chart(
            Chart.Kind.COLUMN,
            "Uses by thing, standing",
            "Thing",
            "Uses in 10 h",
            see,
            RATES,
            "Thing",
            rateSeries),
        new Chart(
            Chart.Kind.STACKED_COLUMN,
            "Losses by month and cause",
            "Month",
            "Pieces",
            "Tall columns are months that cost much.",
            monthly,
            "Month",
            List.of(
                Chart.Series.of("Broken"),
                Chart.Series.of("Lost"),
                Chart.Series.of("Worn"),
                Chart.Series.of("Other"))),
        new Chart(
            Chart.Kind.LINE,
            "Chance of running out",
            "Pieces on the shelf",
            "Chance",
            "Follow a line down to the chance you can live with, and read the pieces below it.",
            chances,
            "Pieces",
            List.of(
                Chart.Series.of("Thing A"),
                Chart.Series.of("Thing B"),
                Chart.Series.of("Thing C"))),
        new Chart(
            Chart.Kind.SCATTER,
            "Rate by place",
            "Place",
            "Rate",
            "Points high on the left matter most.",
            RATES,
            "Place",
            List.of(Chart.Series.of("Rate").as(Chart.Mark.MARKERS))),
        new Block.Rows(RATES));
  }

  private static Drawing plan() {
    return new Drawing(
        "Plan of the room",
        "Two racks and the way between them",
        2.2,
        List.of(
            new Drawing.Area(new Drawing.Frame(0.02, 0.05, 0.96, 0.9), 0, false),
            new Drawing.Area(new Drawing.Frame(0.1, 0.1, 0.3, 0.3), 0.2, false),
            new Drawing.Caption(
                new Drawing.Frame(0.1, 0.1, 0.3, 0.3),
                "Rack one\n12.5 lb",
                0.06,
                Drawing.Align.CENTRE,
                true,
                false),
            new Drawing.Area(new Drawing.Frame(0.5, 0.55, 0.4, 0.35), 0.8, true),
            new Drawing.Caption(
                new Drawing.Frame(0.5, 0.55, 0.4, 0.35),
                "Rack two with a name too long for its place on the plan",
                0.06,
                Drawing.Align.LEFT,
                false,
                true),
            new Drawing.Stroke(
                new Drawing.Point(0.4, 0.25), new Drawing.Point(0.7, 0.55), false, true),
            new Drawing.Stroke(
                new Drawing.Point(0.9, 0.1), new Drawing.Point(0.6, 0.3), true, true),
            new Drawing.Outline(
                List.of(
                    new Drawing.Point(0.05, 0.6),
                    new Drawing.Point(0.3, 0.6),
                    new Drawing.Point(0.4, 0.75),
                    new Drawing.Point(0.3, 0.9),
                    new Drawing.Point(0.05, 0.9))),
            new Drawing.Tag(new Drawing.Point(0.45, 0.45), 0.025, "now", 0.05),
            new Drawing.Tag(new Drawing.Point(0.47, 0.45), 0.025, "then, by the plan", 0.05),
            new Drawing.Marker(new Drawing.Point(0.47, 0.45), 0.05, Drawing.Mark.DIAMOND),
            new Drawing.Marker(new Drawing.Point(0.45, 0.45), 0.05, Drawing.Mark.OPEN_CIRCLE),
            new Drawing.Marker(new Drawing.Point(0.55, 0.45), 0.05, Drawing.Mark.DIAMOND),
            new Drawing.Marker(new Drawing.Point(0.65, 0.45), 0.05, Drawing.Mark.DIAMOND)));
  }

  private static LabelGrid labels() {
    List<LabelGrid.Label> labels = new ArrayList<>();
    for (int i = 0; i < 26; i++) {
      List<LabelGrid.Words> body = new ArrayList<>();
      for (int j = 0; j <= i % 13; j++) {
        body.add(
            new LabelGrid.Words(
                "Thing " + j + " size " + (j + 1) + ": GY grey, BL blue", LabelGrid.Size.SMALL));
      }
      labels.add(
          new LabelGrid.Label(
              List.of(
                  new LabelGrid.Words("Left rack", LabelGrid.Size.SMALL),
                  new LabelGrid.Words(
                      i == 7 ? "A very long name of a shelf" : "Shelf " + (char) ('A' + i),
                      LabelGrid.Size.LARGE)),
              body,
              i % 3 == 0
                  ? Optional.empty()
                  : Optional.of(
                      i % 3 == 1
                          ? new LabelGrid.Tape("yellow", "FFD700")
                          : new LabelGrid.Tape("blue", "1F4E9E"))));
    }
    return new LabelGrid(
        Length.of(63, LengthUnit.MILLIMETRE),
        Length.of(34, LengthUnit.MILLIMETRE),
        3,
        8,
        labels,
        "No labels.");
  }

  static RenderOptions options() {
    return new RenderOptions("2026-03-01", "Store & yard 2026", "USD", false, Map.of());
  }

  public static void main(String[] arguments) throws IOException {
    UnitSystem units = arguments.length > 1 ? UnitSystem.METRIC : UnitSystem.US;
    long start = System.nanoTime();
    Rendered.into(Path.of(arguments[0]), sheets(), units, options());
    System.out.println((System.nanoTime() - start) / 1_000_000 + " ms");
  }
}
