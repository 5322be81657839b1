package sparewell.spares;

import java.util.List;
import sparewell.finding.Finding;
import sparewell.stock.OnHand;

/**
 * Pieces to carry, to bring aboard and to buy.
 *
 * @param rows one for each item in stock, in the order of the workbook
 * @param brings what to bring from ashore, most useful first
 * @param brought what will be on hand once that is brought
 * @param eventNeeds what each event of the horizon needs by itself, in order of date
 * @param idle styles aboard that are not thrown
 */
public record SparesReport(
    Horizon horizon,
    List<SparesRow> rows,
    List<Bring> brings,
    OnHand brought,
    List<EventNeed> eventNeeds,
    Outlook outlook,
    List<IdleStyle> idle,
    List<Finding> findings) {
  public SparesReport {
    rows = List.copyOf(rows);
    brings = List.copyOf(brings);
    eventNeeds = List.copyOf(eventNeeds);
    idle = List.copyOf(idle);
    findings = List.copyOf(findings);
  }
}
