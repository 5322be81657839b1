package sparewell.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinPool;
import sparewell.event.EventPacker;
import sparewell.event.EventPacking;
import sparewell.load.LoadReport;
import sparewell.load.LoadSheet;
import sparewell.ooxml.WorkbookPackage;
import sparewell.rates.LossModel;
import sparewell.rates.record.TrackRecord;
import sparewell.render.CsvRenderer;
import sparewell.render.RenderOptions;
import sparewell.render.SheetRenderer;
import sparewell.run.RunOptions;
import sparewell.save.OwnParts;
import sparewell.save.OwnSheet;
import sparewell.save.WorkbookSaver;
import sparewell.season.Season;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.Results;
import sparewell.sheet.Typed;
import sparewell.spares.BuyList;
import sparewell.spares.BuyPlanner;
import sparewell.spares.OffSeason;
import sparewell.spares.OffSeasonPlanner;
import sparewell.spares.SeasonPlan;
import sparewell.spares.SeasonPlanner;
import sparewell.spares.SparesPlanner;
import sparewell.spares.SparesReport;
import sparewell.stock.OnHand;
import sparewell.stock.OnHandCalculator;
import sparewell.stow.StowPlan;
import sparewell.stow.StowPlanner;
import sparewell.table.Block;
import sparewell.table.ReportSheet;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.read.SeasonReader;

/** One analysis, part after part, in a fresh process: prints the time of each part. */
public final class Parts {
  private Parts() {}

  /** Analyses the workbook named first, writing beside it; a second argument repeats the work. */
  public static void main(String[] arguments) throws Exception {
    Path book = Path.of(arguments[0]);
    int times = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1;
    for (int i = 0; i < times; i++) {
      once(book, i == times - 1);
    }
  }

  private static void once(Path path, boolean print) throws Exception {
    Clock clock = new Clock(print);
    LocalDateTime now = LocalDateTime.of(2026, 3, 1, 12, 0);
    Path target = path.resolveSibling("parts-" + path.getFileName());
    try (WorkbookPackage book = clock.time("open", () -> WorkbookPackage.open(path))) {
      Season season =
          clock.time(
              "read", () -> SeasonReader.read(book, ReadOptions.on(now.toLocalDate())).season());
      OnHand onHand = clock.time("on hand", () -> OnHandCalculator.of(season));
      LossModel rates = clock.time("fit", () -> LossModel.fit(season));
      SparesReport spares = clock.time("spares", () -> SparesPlanner.plan(season, onHand, rates));
      BuyList buys = clock.time("buy", () -> BuyPlanner.plan(season, spares, rates));
      EventPacking packing =
          clock.time("pack", () -> EventPacker.pack(season, buys.bought(), spares.eventNeeds()));
      SeasonPlan ahead =
          clock.time("season plan", () -> SeasonPlanner.plan(season, onHand, rates, spares.rows()));
      Optional<OffSeason> off =
          clock.time("off season", () -> OffSeasonPlanner.plan(season, onHand, rates));
      StowPlan stow = clock.time("stow", () -> StowPlanner.plan(season, packing.packed()));
      LoadReport load = clock.time("load", () -> LoadSheet.of(season, onHand, stow));
      TrackRecord record = clock.time("track record", () -> TrackRecord.of(season));
      Results results =
          new Results(
              "bench",
              season,
              List.of(),
              onHand,
              rates,
              record,
              spares,
              buys,
              ahead,
              off,
              packing,
              stow,
              load,
              Typed.NOTHING,
              Optional.empty());
      List<ReportSheet> sheets = clock.time("sheets", () -> ReportSheets.of(results).sheets());
      List<OwnSheet> own =
          sheets.stream()
              .map(s -> new OwnSheet(s.name(), s.name().equals(ReportSheets.FRONT)))
              .toList();
      OwnParts parts = clock.time("look", () -> OwnParts.of(book, own));
      clock.time(
          "render",
          () -> {
            SheetRenderer.render(
                sheets,
                season.settings().units(),
                new RenderOptions(
                    now.toLocalDate().toString(),
                    path.getFileName().toString(),
                    season.settings().currency(),
                    book.date1904(),
                    Map.of()),
                parts,
                ForkJoinPool.commonPool());
            return null;
          });
      clock.time(
          "save",
          () -> WorkbookSaver.save(parts, book, target, now, RunOptions.USUAL_BACKUPS, false));
      clock.time("csv files", () -> csv(sheets, season, path));
    } finally {
      Files.deleteIfExists(target);
    }
    clock.total();
  }

  private static Void csv(List<ReportSheet> sheets, Season season, Path path) throws Exception {
    Path folder = Files.createDirectories(path.resolveSibling("parts-reports"));
    for (ReportSheet sheet : sheets) {
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Rows rows && !rows.table().csvFile().isEmpty()) {
          Files.writeString(
              folder.resolve(rows.table().csvFile()),
              CsvRenderer.text(rows.table(), season.settings().units()));
        }
      }
    }
    return null;
  }

  /** Wall time, and processor time of the process with compiler and collector. */
  private static final class Clock {
    private final OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private final boolean print;
    private long wall;
    private long processor;

    Clock(boolean print) {
      this.print = print;
    }

    <T> T time(String part, Callable<T> work) throws Exception {
      long wallBefore = System.nanoTime();
      long processorBefore = system.getProcessCpuTime();
      T result = work.call();
      long tookWall = System.nanoTime() - wallBefore;
      long tookProcessor = system.getProcessCpuTime() - processorBefore;
      wall += tookWall;
      processor += tookProcessor;
      line(part, tookWall, tookProcessor);
      return result;
    }

    void total() {
      line("all", wall, processor);
    }

    private void line(String part, long wallNanos, long processorNanos) {
      if (print) {
        System.out.printf(
            java.util.Locale.ROOT, "%s;%.3f;%.3f%n", part, wallNanos / 1e9, processorNanos / 1e9);
      }
    }
  }
}
