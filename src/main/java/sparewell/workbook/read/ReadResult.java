package sparewell.workbook.read;

import java.util.List;
import java.util.Map;
import sparewell.finding.Finding;
import sparewell.season.Season;

/**
 * Result of reading a workbook.
 *
 * @param findings faults and assumptions, in the order of the input sheets and their rows
 * @param sheetOrder names of the input sheets read, as the workbook spells them, in the order of
 *     the input sheets; for sorting more findings in
 * @param columns column numbers by sheet, as the workbook spells it, and declared column
 */
public record ReadResult(
    Season season,
    List<Finding> findings,
    List<String> sheetOrder,
    Map<String, Map<String, Integer>> columns) {}
