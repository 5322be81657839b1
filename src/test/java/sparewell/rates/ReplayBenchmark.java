package sparewell.rates;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import sparewell.bench.BenchReport;
import sparewell.rates.record.TrackRecord;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;

/**
 * Processor time of a fit and of a replay for 60 styles, 600 trips and 6,000 style-trips with
 * cover, some of them run out, without and with a half-life.
 */
public final class ReplayBenchmark {
  private ReplayBenchmark() {}

  /** Runs it. */
  public static void main(String[] args) throws IOException {
    try (BenchReport report =
        BenchReport.of(
            "replay", "Time of a large fit and of its replay", "mvn -q -Preplay test-compile")) {
      report.text("60 styles, 600 trips, 6,000 style-trips; the first run is of a cold Java.");
      report.table(
          List.of(
              "half-life", "run", "fit and tables, CPU s", "replay, CPU s", "predictions", "fits"));
      for (OptionalDouble halfLife : List.of(OptionalDouble.empty(), OptionalDouble.of(12))) {
        run(report, halfLife, 1);
        run(report, halfLife, 2);
      }
    }
  }

  private static void run(BenchReport report, OptionalDouble halfLife, int number) {
    Season season = season(halfLife);
    double before = seconds();
    LossModel.fit(season);
    double fitted = seconds();
    TrackRecord record = TrackRecord.of(season);
    report.row(
        "%s | %d | %.2f | %.2f | %d | %d",
        halfLife.isPresent() ? "12 months" : "none",
        number,
        fitted - before,
        seconds() - fitted,
        record.lines().get(0).predictions(),
        record.fits());
  }

  private static double seconds() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1e9;
  }

  private static Season season(OptionalDouble halfLife) {
    Random random = new Random(5);
    SeasonMaker book = new SeasonMaker();
    book.halfLifeMonths = halfLife;
    for (int s = 0; s < 60; s++) {
      book.style("S" + s, "F" + s % 7, "red", "blue", "green");
    }
    String[] covers = {"wood", "grass", "rock", ""};
    for (int t = 0; t < 600; t++) {
      String trip = "T" + t;
      int cover = random.nextInt(4);
      book.trip(trip, t, 10, covers[cover]);
      for (int k = 0; k < 10; k++) {
        String style = "S" + (t * 7 + k * 6) % 60;
        double hours = 0.5 + 4 * random.nextDouble();
        book.thrown(trip, style, hours);
        double mean = hours * 0.06 * (1 + (t * 7 + k * 6) % 4) / 2 * (1 + cover) / 2;
        int lost = 0;
        for (double p = random.nextDouble(); p > Math.exp(-mean); p *= random.nextDouble()) {
          lost++;
        }
        if (lost > 0) {
          book.lost(trip, style, "red", Math.min(lost, 3), lost >= 3);
        }
      }
    }
    return book.season();
  }
}
