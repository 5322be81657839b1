package sparewell.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ForkJoinTask;
import sparewell.check.Checks;
import sparewell.event.EventPacker;
import sparewell.event.EventPacking;
import sparewell.finding.Finding;
import sparewell.finding.FindingList;
import sparewell.load.LoadReport;
import sparewell.load.LoadSheet;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.rates.LossModel;
import sparewell.rates.TrackRecord;
import sparewell.season.Season;
import sparewell.sheet.Results;
import sparewell.spares.BuyList;
import sparewell.spares.BuyPlanner;
import sparewell.spares.OffSeason;
import sparewell.spares.OffSeasonPlanner;
import sparewell.spares.SparesPlanner;
import sparewell.spares.SparesReport;
import sparewell.stock.OnHand;
import sparewell.stock.OnHandCalculator;
import sparewell.stow.StowPlan;
import sparewell.stow.StowPlanner;
import sparewell.workbook.read.ReadOptions;
import sparewell.workbook.read.ReadResult;
import sparewell.workbook.read.SeasonReader;
import sparewell.workbook.read.UnusableWorkbook;

/** The chain of analyses, once through. */
final class Analysis {
  private Analysis() {}

  /** Reads an opened workbook and works everything out. */
  static Results of(
      WorkbookPackage book, ReadOptions options, String version, List<Finding> alreadyFound)
      throws UnusableWorkbook, WorkbookRefused {
    ReadResult read = SeasonReader.read(book, options);
    Season season = read.season();
    OnHand onHand = OnHandCalculator.of(season);
    // Neither half needs the other, so they run side by side; but among several workbooks each
    // keeps to its thread, so that no more of them are in memory than there are threads.
    ForkJoinTask<Boat> boatSide = ForkJoinTask.adapt(() -> Boat.of(season, onHand));
    if (!ForkJoinTask.inForkJoinPool()) {
      boatSide.fork();
    }
    LossModel rates = LossModel.fit(season);
    SparesReport spares = SparesPlanner.plan(season, onHand, rates);
    BuyList buys = BuyPlanner.plan(season, spares, rates);
    EventPacking packing = EventPacker.pack(season, onHand, spares.eventNeeds());
    Optional<OffSeason> offSeason = OffSeasonPlanner.plan(season, onHand, rates);
    Boat boat = ForkJoinTask.inForkJoinPool() ? boatSide.invoke() : boatSide.join();
    StowPlan stow = boat.stow();
    LoadReport load = boat.load();
    List<Finding> findings = new ArrayList<>(alreadyFound);
    findings.addAll(read.findings());
    findings.addAll(Checks.of(season));
    findings.addAll(onHand.findings());
    findings.addAll(rates.findings());
    findings.addAll(spares.findings());
    findings.addAll(buys.findings());
    findings.addAll(packing.findings());
    findings.addAll(stow.findings());
    findings.addAll(load.findings());
    return new Results(
        version,
        season,
        sorted(findings, read.sheetOrder()),
        onHand,
        rates,
        boat.record(),
        spares,
        buys,
        offSeason,
        packing,
        stow,
        load,
        LastFigures.of(book));
  }

  /** What needs no fitted rates: the boat, and the replay with fits of its own. */
  private record Boat(StowPlan stow, LoadReport load, TrackRecord record) {
    static Boat of(Season season, OnHand onHand) {
      StowPlan stow = StowPlanner.plan(season, onHand);
      return new Boat(stow, LoadSheet.of(season, onHand, stow), TrackRecord.of(season));
    }
  }

  /** Gravest first, otherwise in the order of the sheets, row and column. */
  private static List<Finding> sorted(List<Finding> findings, List<String> sheetOrder) {
    List<Finding> sorted =
        new ArrayList<>(FindingList.of(findings.stream().distinct().toList(), sheetOrder));
    sorted.sort(Comparator.comparing(Finding::severity));
    return sorted;
  }
}
