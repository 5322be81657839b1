package sparewell.sheet;

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
 * @param version version of the program
 * @param season the angler's records
 * @param findings all findings, gravest first
 * @param onHand what is on hand
 * @param rates the fitted loss rates
 * @param trackRecord the replay of the angler's own history
 * @param spares what to carry and bring
 * @param buys what to buy
 * @param seasonPlan all events ahead
 * @param offSeason the look back and ahead over a season, where there is something to look back on
 * @param packing what to pack for the events ahead
 * @param stow which box goes where
 * @param load the load sheet
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
    Optional<LastRun> lastRun) {
  public Results {
    findings = List.copyOf(findings);
  }
}
