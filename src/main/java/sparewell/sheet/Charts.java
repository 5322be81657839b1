package sparewell.sheet;

import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sparewell.load.CompartmentLoad;
import sparewell.rates.StyleRate;
import sparewell.season.Cause;
import sparewell.spares.BuyList;
import sparewell.spares.OffSeason;
import sparewell.spares.SeasonPlan;
import sparewell.spares.SparesRow;
import sparewell.table.Chart;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Table;

/** The charts of the sheets; absent where there is nothing to draw. */
final class Charts {
  /** More lines than these run into each other. */
  private static final int MOST_ITEMS = 5;

  private static final int MOST_STYLES = 30;
  private static final int MOST_PIECES = 15;

  private Charts() {}

  /** Loss rate of every style that was used, most lost first. */
  static Optional<Chart> lossRates(List<StyleRate> rates) {
    List<StyleRate> used =
        rates.stream()
            .filter(rate -> rate.basis() != StyleRate.Basis.NONE)
            .sorted(Comparator.comparingDouble(rate -> -rate.ratePer10Hours().orElse(0)))
            .limit(MOST_STYLES)
            .toList();
    Table<StyleRate> data =
        table(
            List.of(
                column("Style", Format.TEXT, StyleRate::style),
                column("Best estimate", Format.NUMBER, StyleRate::ratePer10Hours),
                column("Log alone", Format.NUMBER, StyleRate::rawPer10Hours),
                column("Low", Format.NUMBER, StyleRate::low90Per10Hours),
                column("High", Format.NUMBER, StyleRate::high90Per10Hours)),
            used);
    return some(
        data,
        new Chart(
            Chart.Kind.BAR,
            "What you lose of each style, with 90 % intervals",
            "Style",
            "Pieces lost in 10 hours",
            "A long whisker means that there are few data yet. Where the two bars differ, the"
                + " estimate borrows from the style's family.",
            data,
            "Style",
            List.of(
                Chart.Series.of("Best estimate").between("Low", "High"),
                Chart.Series.of("Log alone").as(Chart.Mark.MARKERS))));
  }

  /** Run-out chance of the items most likely to run out, against the pieces aboard. */
  static Optional<Chart> runOut(List<SparesRow> rows) {
    List<SparesRow> worst =
        rows.stream()
            .filter(SparesRow::used)
            .sorted(Comparator.comparingDouble(row -> -row.runOutNowProbability()))
            .limit(MOST_ITEMS)
            .toList();
    int most = worst.stream().mapToInt(row -> Math.max(row.carry(), row.aboard())).max().orElse(0);
    List<Integer> counts = new ArrayList<>();
    for (int pieces = 0; pieces <= Math.min(MOST_PIECES, most + 1); pieces++) {
      counts.add(pieces);
    }
    List<Column<Integer>> columns = new ArrayList<>();
    columns.add(column("Pieces", Format.COUNT, pieces -> pieces));
    List<Chart.Series> series = new ArrayList<>();
    for (SparesRow row : worst) {
      String name = row.item().spoken() + " (" + row.aboard() + " aboard)";
      columns.add(column(name, Format.PROBABILITY, pieces -> row.losses().above(pieces)));
      series.add(Chart.Series.of(name));
    }
    if (series.isEmpty()) {
      return Optional.empty();
    }
    Table<Integer> data = table(columns, counts);
    return some(
        data,
        new Chart(
            Chart.Kind.LINE,
            "Chance to run out against pieces aboard: the items worst off",
            "Pieces aboard",
            "Chance to run out",
            "Each piece more lowers the chance of running out; where a line flattens, further"
                + " pieces hardly help.",
            data,
            "Pieces",
            series));
  }

  /** Chance that nothing important runs out, for each amount of money. */
  static Optional<Chart> money(Table<BuyList.Point> curve) {
    if (curve.rows().stream().anyMatch(point -> point.nothingRunsOutProbability().isEmpty())) {
      return Optional.empty();
    }
    return some(
        curve,
        new Chart(
            Chart.Kind.SCATTER,
            "What the money buys",
            "Money spent",
            "Chance that nothing important runs out",
            "Where the line turns flat, further money hardly lowers the risk; it only fills"
                + " floors.",
            curve,
            "Money",
            List.of(Chart.Series.of("Chance nothing runs out"))));
  }

  /** Weight in every compartment, from the transom to the bow. */
  static Optional<Chart> weights(List<CompartmentLoad> compartments) {
    List<CompartmentLoad> alongBoat =
        compartments.stream().sorted(Comparator.comparing(CompartmentLoad::fromTransom)).toList();
    Table<CompartmentLoad> data =
        table(
            List.of(
                column("Compartment", Format.TEXT, CompartmentLoad::compartment),
                column("Now", Format.MASS, CompartmentLoad::weight),
                column("With the stow plan", Format.MASS, CompartmentLoad::plannedWeight)),
            alongBoat);
    return some(
        data,
        new Chart(
            Chart.Kind.COLUMN,
            "Tackle weight along the boat",
            "Compartment, transom on the left, bow on the right",
            "Weight",
            "Light forward and heavy aft shows as tall columns on the left and low ones on the"
                + " right.",
            data,
            "Compartment",
            List.of(Chart.Series.of("Now"), Chart.Series.of("With the stow plan"))));
  }

  /** Pieces lost in each month by cause. */
  static Optional<Chart> months(OffSeason view) {
    List<Column<OffSeason.MonthLine>> columns = new ArrayList<>();
    columns.add(column("Month", Format.TEXT, Charts::month));
    List<Chart.Series> series = new ArrayList<>();
    for (OffSeason.CauseLine line : view.causes()) {
      Cause cause = line.cause();
      columns.add(
          column(cause.word(), Format.COUNT, month -> month.pieces().getOrDefault(cause, 0)));
      series.add(Chart.Series.of(cause.word()));
    }
    if (series.isEmpty()) {
      return Optional.empty();
    }
    Table<OffSeason.MonthLine> data = table(columns, view.months());
    return some(
        data,
        new Chart(
            Chart.Kind.STACKED_COLUMN,
            "Losses per month by cause",
            "Month",
            "Pieces lost",
            "Months with the highest losses, and what caused them.",
            data,
            "Month",
            series));
  }

  private static String month(OffSeason.MonthLine line) {
    String name = line.month().getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    return name + " " + line.month().getYear();
  }

  /** Falling stock of the styles that run down first, with the band of the forecast. */
  static Optional<Chart> courses(List<SeasonPlan.Course> courses) {
    if (courses.isEmpty()) {
      return Optional.empty();
    }
    List<Integer> rows = new ArrayList<>();
    for (int i = 0; i < courses.get(0).points().size(); i++) {
      rows.add(i);
    }
    List<Column<Integer>> columns = new ArrayList<>();
    columns.add(column("Date", Format.DATE, row -> courses.get(0).points().get(row).date()));
    List<Chart.Series> series = new ArrayList<>();
    for (SeasonPlan.Course course : courses) {
      String low = course.style() + ", low";
      String high = course.style() + ", high";
      columns.add(
          column(course.style(), Format.NUMBER, row -> course.points().get(row).expectedPieces()));
      columns.add(column(low, Format.COUNT, row -> course.points().get(row).low90Pieces()));
      columns.add(column(high, Format.COUNT, row -> course.points().get(row).high90Pieces()));
      series.add(Chart.Series.of(course.style()).between(low, high));
    }
    Table<Integer> data = table(columns, rows);
    return some(
        data,
        new Chart(
            Chart.Kind.BANDS,
            "Stock left if nothing is bought: the styles that run down first",
            "After the event of that date",
            "Pieces left",
            "The band holds the stock with 90 % probability; where it reaches zero, the style may"
                + " have run out.",
            data,
            "Date",
            series));
  }

  private static <R> Column<R> column(
      String heading, Format format, java.util.function.Function<R, ?> value) {
    return format.onSheet(heading, "", value);
  }

  private static <R> Table<R> table(List<Column<R>> columns, List<R> rows) {
    return new Table<>("", "", columns, rows, "");
  }

  private static Optional<Chart> some(Table<?> data, Chart chart) {
    return data.rows().isEmpty() ? Optional.empty() : Optional.of(chart);
  }
}
