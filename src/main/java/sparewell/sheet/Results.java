package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.event.EventPacking;
import sparewell.finding.Finding;
import sparewell.load.LoadReport;
import sparewell.rates.LossModel;
import sparewell.rates.record.TrackRecord;
import sparewell.season.Season;
import sparewell.spares.BuyList;
import sparewell.spares.OffSeason;
import sparewell.spares.SeasonPlan;
import sparewell.spares.SparesReport;
import sparewell.stock.OnHand;
import sparewell.stow.StowPlan;

/**
 * Everything that the analyses found, from which all sheets are made.
 *
 * @param findings all findings, gravest first
 * @param trackRecord the replay of the angler's own history
 * @param offSeason the look back and ahead over a season, where there is something to look back on
 * @param typed what the angler typed into our sheets, and what was posted of it
 * @param lastRun what the last run left in the workbook; absent on the first run
 */
public record Results(
    String version,
    Season season,
    List<Finding> findings,
    OnHand onHand,
    LossModel rates,
    TrackRecord trackRecord,
    SparesReport spares,
    BuyList buys,
    SeasonPlan seasonPlan,
    Optional<OffSeason> offSeason,
    EventPacking packing,
    StowPlan stow,
    LoadReport load,
    Typed typed,
    Optional<LastRun> lastRun) {
  public Results {
    findings = List.copyOf(findings);
  }

  /** The same without what was typed for lines that are gone, which findings tell of instead. */
  Results without(List<Typed.Row> gone, List<Finding> more) {
    List<Typed.Row> rows = new ArrayList<>(typed.rows());
    rows.removeAll(gone);
    Typed left = new Typed(rows, typed.card(), typed.carded(), List.of(), typed.posted());
    List<Finding> all = new ArrayList<>(more);
    all.addAll(findings);
    all.sort(Comparator.comparing(Finding::severity));
    return new Results(
        version,
        season,
        all,
        onHand,
        rates,
        trackRecord,
        spares,
        buys,
        seasonPlan,
        offSeason,
        packing,
        stow,
        load,
        left,
        lastRun);
  }
}
