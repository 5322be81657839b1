package sparewell.sheet;

import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
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

  private static final Map<String, List<String>> TEXTS = Columns.texts("Charts");

  private Charts() {}

  static Optional<Chart> lossRates(List<StyleRate> rates) {
    List<StyleRate> used =
        rates.stream()
            .filter(rate -> rate.basis() != StyleRate.Basis.NONE)
            .sorted(Comparator.comparingDouble(rate -> -rate.ratePer10Hours().orElse(0)))
            .limit(MOST_STYLES)
            .toList();
    return chart(
        "Loss rates",
        Chart.Kind.BAR,
        used,
        List.of(
            Format.TEXT.onSheet("Style", "", StyleRate::style),
            Format.NUMBER.onSheet("Best estimate", "", StyleRate::ratePer10Hours),
            Format.NUMBER.onSheet("Log alone", "", StyleRate::rawPer10Hours),
            Format.NUMBER.onSheet("Low", "", StyleRate::low90Per10Hours),
            Format.NUMBER.onSheet("High", "", StyleRate::high90Per10Hours)),
        List.of(
            Chart.Series.of("Best estimate").between("Low", "High"),
            Chart.Series.of("Log alone").as(Chart.Mark.MARKERS)));
  }

  static Optional<Chart> runOut(List<SparesRow> rows) {
    List<SparesRow> worst =
        rows.stream()
            .filter(SparesRow::used)
            .sorted(Comparator.comparingDouble(row -> -row.runOutNowProbability()))
            .limit(MOST_ITEMS)
            .toList();
    int most = worst.stream().mapToInt(row -> Math.max(row.carry(), row.aboard())).max().orElse(0);
    List<Integer> counts =
        IntStream.rangeClosed(0, Math.min(MOST_PIECES, most + 1)).boxed().toList();
    List<Column<Integer>> columns = new ArrayList<>();
    columns.add(Format.COUNT.onSheet("Pieces", "", pieces -> pieces));
    List<Chart.Series> series = new ArrayList<>();
    for (SparesRow row : worst) {
      String name = row.item().spoken() + " (" + row.aboard() + " aboard)";
      columns.add(Format.PROBABILITY.onSheet(name, "", pieces -> row.losses().above(pieces)));
      series.add(Chart.Series.of(name));
    }
    return chart("Run-out", Chart.Kind.LINE, counts, columns, series);
  }

  static Optional<Chart> money(Table<BuyList.Point> curve) {
    if (curve.rows().stream().anyMatch(point -> point.nothingRunsOutProbability().isEmpty())) {
      return Optional.empty();
    }
    return chart(
        "Money", Chart.Kind.SCATTER, curve, List.of(Chart.Series.of("Chance nothing runs out")));
  }

  static Optional<Chart> weights(List<CompartmentLoad> compartments) {
    List<CompartmentLoad> alongBoat =
        compartments.stream()
            .sorted(Comparator.comparing((CompartmentLoad row) -> row.centre().fromTransom()))
            .toList();
    return chart(
        "Weights",
        Chart.Kind.COLUMN,
        alongBoat,
        List.of(
            Format.TEXT.onSheet("Compartment", "", CompartmentLoad::compartment),
            Format.MASS.onSheet("Now", "", CompartmentLoad::weight),
            Format.MASS.onSheet("With the stow plan", "", CompartmentLoad::plannedWeight)),
        List.of(Chart.Series.of("Now"), Chart.Series.of("With the stow plan")));
  }

  static Optional<Chart> months(OffSeason view) {
    List<Column<OffSeason.MonthLine>> columns = new ArrayList<>();
    columns.add(Format.TEXT.onSheet("Month", "", Charts::month));
    List<Chart.Series> series = new ArrayList<>();
    for (OffSeason.CauseLine line : view.causes()) {
      Cause cause = line.cause();
      columns.add(
          Format.COUNT.onSheet(cause.word(), "", month -> month.pieces().getOrDefault(cause, 0)));
      series.add(Chart.Series.of(cause.word()));
    }
    return chart("Months", Chart.Kind.STACKED_COLUMN, view.months(), columns, series);
  }

  private static String month(OffSeason.MonthLine line) {
    String name = line.month().getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    return name + " " + line.month().getYear();
  }

  static Optional<Chart> courses(List<SeasonPlan.Course> courses) {
    if (courses.isEmpty()) {
      return Optional.empty();
    }
    List<Integer> rows = IntStream.range(0, courses.get(0).points().size()).boxed().toList();
    List<Column<Integer>> columns = new ArrayList<>();
    columns.add(Format.DATE.onSheet("Date", "", row -> courses.get(0).points().get(row).date()));
    List<Chart.Series> series = new ArrayList<>();
    for (SeasonPlan.Course course : courses) {
      String low = course.style() + ", low";
      String high = course.style() + ", high";
      columns.add(
          Format.NUMBER.onSheet(
              course.style(), "", row -> course.points().get(row).expectedPieces()));
      columns.add(Format.COUNT.onSheet(low, "", row -> course.points().get(row).low90Pieces()));
      columns.add(Format.COUNT.onSheet(high, "", row -> course.points().get(row).high90Pieces()));
      series.add(Chart.Series.of(course.style()).between(low, high));
    }
    return chart("Courses", Chart.Kind.BANDS, rows, columns, series);
  }

  static <R> Optional<Chart> chart(
      String name,
      Chart.Kind kind,
      List<R> rows,
      List<Column<R>> columns,
      List<Chart.Series> series) {
    return chart(name, kind, new Table<>("", "", columns, rows, ""), series);
  }

  /** A chart over the first column of its data, with the texts of its line in the file. */
  private static Optional<Chart> chart(
      String name, Chart.Kind kind, Table<?> data, List<Chart.Series> series) {
    String x = data.columns().get(0).heading();
    List<String> texts = TEXTS.get(name);
    return data.rows().isEmpty() || series.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Chart(
                kind, texts.get(1), texts.get(2), texts.get(3), texts.get(4), data, x, series));
  }
}
