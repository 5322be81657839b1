package sparewell.workbook.read;

import java.util.List;
import sparewell.finding.Finding;
import sparewell.season.Season;

/**
 * What a workbook says.
 *
 * @param season its content
 * @param findings what was found on the way, in the order of the input sheets and their rows
 * @param sheetOrder names of the input sheets read, as the workbook spells them, in the order of
 *     the input sheets; for sorting more findings in
 */
public record ReadResult(Season season, List<Finding> findings, List<String> sheetOrder) {
  public ReadResult {
    findings = List.copyOf(findings);
    sheetOrder = List.copyOf(sheetOrder);
  }
}
