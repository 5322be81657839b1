package sparewell.sheet;

import java.util.List;
import sparewell.table.ReportSheet;

/**
 * Output of a run.
 *
 * @param results all that was found, with what the sheets themselves have to tell
 */
public record Report(Results results, List<Step> toDo, List<ReportSheet> sheets) {
  public Report {
    toDo = List.copyOf(toDo);
    sheets = List.copyOf(sheets);
  }
}
