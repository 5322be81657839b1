package sparewell.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.check.Checks;
import sparewell.event.EventPacker;
import sparewell.event.EventPacking;
import sparewell.finding.Finding;
import sparewell.finding.Findings;
import sparewell.load.LoadReport;
import sparewell.load.LoadSheet;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.rates.LossModel;
import sparewell.season.Season;
import sparewell.season.SeasonOrder;
import sparewell.sheet.LastRun;
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
import sparewell.workbook.read.ReadResult;
import sparewell.workbook.read.SeasonReader;
import sparewell.workbook.read.UnusableInput;

/** The chain of analyses, once through. */
final class Analysis {
  private Analysis() {}

  /**
   * Reads an opened workbook and works everything out; {@code lastRun} has our sheets of before.
   */
  static Results of(
      WorkbookPackage book,
      WorkbookPackage lastRun,
      Beside.Work<Typed, WorkbookRefused> typed,
      RunOptions options,
      List<Finding> alreadyFound)
      throws UnusableInput, WorkbookRefused {
    Beside.Work<Optional<LastRun>, WorkbookRefused> lastFigures =
        Beside.begin(() -> OwnSheetReader.lastRun(lastRun));
    ReadResult read = SeasonReader.read(book, options.reading());
    Season season = SeasonOrder.of(read.season());
    OnHand onHand = OnHandCalculator.of(season);
    // What needs no fitted rates runs beside the fit, in parts that either thread may take up.
    KeptModel kept = new KeptModel(season, log -> Beside.begin(() -> KeptModel.record(log))::get);
    List<Finding> findings = new ArrayList<>(alreadyFound);
    LossModel rates = kept.model(options.experience().of(lastRun.file(), findings));
    Beside.Work<Optional<OffSeason>, RuntimeException> yearAhead =
        Beside.begin(() -> OffSeasonPlanner.plan(season, onHand, rates));
    SparesReport spares = SparesPlanner.plan(season, onHand, rates);
    Beside.Work<SeasonPlan, RuntimeException> eventsAhead =
        Beside.begin(() -> SeasonPlanner.plan(season, onHand, rates, spares.rows()));
    BuyList buys = BuyPlanner.plan(season, spares, rates);
    EventPacking packing = EventPacker.pack(season, buys.bought(), spares.eventNeeds());
    // The boxes are stowed as they will be packed, so the stowing waits for the packing.
    Beside.Work<StowPlan, RuntimeException> stowing =
        Beside.begin(() -> StowPlanner.plan(season, packing.packed()));
    Beside.Work<List<Finding>, RuntimeException> checks = Beside.begin(() -> Checks.of(season));
    Optional<OffSeason> offSeason = yearAhead.get(); // first what most likely nobody has begun
    StowPlan stow = stowing.get();
    LoadReport load = LoadSheet.of(season, onHand, stow);
    findings.addAll(read.findings());
    findings.addAll(checks.get());
    findings.addAll(onHand.findings());
    findings.addAll(rates.findings());
    findings.addAll(spares.findings());
    findings.addAll(buys.findings());
    findings.addAll(packing.findings());
    findings.addAll(stow.findings());
    findings.addAll(load.findings());
    return new Results(
        options.version(),
        season,
        sorted(findings, read),
        onHand,
        rates,
        kept.record().get(),
        spares,
        buys,
        eventsAhead.get(),
        offSeason,
        packing,
        stow,
        load,
        typed.get(),
        lastFigures.get());
  }

  /** Gravest first, otherwise in the order of the sheets, row and column. */
  private static List<Finding> sorted(List<Finding> findings, ReadResult read) {
    List<Finding> located = findings.stream().map(f -> f.located(read.columns())).toList();
    List<Finding> sorted =
        new ArrayList<>(Findings.inOrder(located.stream().distinct().toList(), read.sheetOrder()));
    sorted.sort(Comparator.comparing(Finding::severity));
    return sorted;
  }
}
