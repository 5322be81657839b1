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
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;
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
              Column.of("shelf", "Shelf", Format.TEXT, "Name of the shelf.", Shelf::name)
                  .linked(row -> Optional.of(new Cell("Store", row.pieces() + 1, 2))),
              Column.of("pieces", "Pieces", Format.COUNT, "Whole pieces on it.", Shelf::pieces)
                  .summed(),
              Column.of("mass", "Weight", Format.MASS, "Weight of all pieces on it.", Shelf::mass)
                  .summed(),
              Column.of(
                      "run_out_chance",
                      "Chance of running out",
                      Format.PROBABILITY,
                      "Chance that all pieces are used up before the next delivery; under 5 % is"
                          + " what was asked for.",
                      Shelf::chance)
                  .toned(Sample::tone),
              Column.of("ratio", "Ratio", Format.NUMBER, "Used to delivered.", Shelf::ratio),
              Column.of("cost", "Cost", Format.MONEY, "Cost of all pieces.", Shelf::cost).summed(),
              Column.of("checked", "Last checked", Format.DATE, "Day it was seen.", Shelf::checked),
              Column.of("full", "Full", Format.YES_NO, "Whether more would fit.", Shelf::full),
              Column.sheetOnly("Note", Format.TEXT, "Anything else.", Shelf::note)),
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
                new Block.Rows(TABLE))));
  }

  static RenderOptions options() {
    return new RenderOptions("2026-03-01", "Store & yard 2026", "USD", Map.of());
  }

  public static void main(String[] arguments) throws IOException {
    UnitSystem units = arguments.length > 1 ? UnitSystem.METRIC : UnitSystem.US;
    long start = System.nanoTime();
    SheetRenderer.render(sheets(), units, options(), Path.of(arguments[0]));
    System.out.println((System.nanoTime() - start) / 1_000_000 + " ms");
  }
}
