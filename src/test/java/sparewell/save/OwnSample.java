package sparewell.save;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.table.Block;
import sparewell.table.Chart;
import sparewell.table.Column;
import sparewell.table.Entry;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/** Made-up sheets as rich as ours: looks, notes, tables, sums, charts, links, cells to fill. */
final class OwnSample {
  private record Line(String style, int pieces, double weight, Optional<LocalDate> day) {}

  private static final List<String> FILES = List.of("first.csv", "second.csv", "third.csv");

  private OwnSample() {}

  /** Sheets of these names; one text in each is the given one. */
  static List<ReportSheet> sheets(List<String> names, String text) {
    List<ReportSheet> sheets = new ArrayList<>();
    for (String name : names) {
      Table<Line> table = table(sheets.size(), text);
      Chart chart =
          new Chart(
              Chart.Kind.COLUMN,
              "Pieces",
              "Style",
              "Pieces",
              "See.",
              table,
              "Style",
              List.of(Chart.Series.of("Pieces")));
      sheets.add(
          new ReportSheet(name, "What to <carry> & why", List.of(new Block.Rows(table), chart)));
    }
    return sheets;
  }

  private static Table<Line> table(int number, String text) {
    List<Line> lines = new ArrayList<>();
    for (String style : List.of("=1+1", "  " + text + "  ", "line one\nline two")) {
      int row = lines.size();
      Optional<LocalDate> day = row == 0 ? Optional.of(LocalDate.of(2026, 3, 8)) : Optional.empty();
      lines.add(new Line(style, 10 * number + row, 1.25 * row, day));
    }
    return new Table<>(
        FILES.get(number),
        "",
        List.of(
            Format.TEXT
                .column("style", "Style", "a note", Line::style)
                .linked(line -> Optional.of(new Cell("Stock", 1, 1))),
            Format.COUNT.column("pieces", "Pieces", "Pieces.", Line::pieces).summed(),
            Format.ITEM_MASS.column("weight", "Weight", "Weight.", Line::weight),
            Format.PROBABILITY.column("chance", "Chance", "Chance.", line -> 0.5),
            Column.entry("Done", "Done.", Entry.anything("yes?", "yes")),
            Format.DATE.column("day", "Day", "Day.", Line::day)),
        lines,
        "");
  }
}
