package sparewell.sheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Function;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** All output sheets in their order; a new one is listed here. */
public final class ReportSheets {
  /** The front page, which stands before the angler's sheets; the others stand behind them. */
  public static final String FRONT = AfterTripSheet.NAME;

  private static final Map<String, Function<Results, ReportSheet>> BEHIND = behind();

  private ReportSheets() {}

  private static Map<String, Function<Results, ReportSheet>> behind() {
    Map<String, Function<Results, ReportSheet>> all = new LinkedHashMap<>();
    all.put("Loss rates", results -> LossRatesSheet.of(results.rates()));
    all.put(SparesSheet.NAME, results -> SparesSheet.of(results.spares(), results.buys()));
    all.put(BuyListSheet.NAME, results -> BuyListSheet.of(results.buys(), results.offSeason()));
    all.put(
        SeasonPlanSheet.NAME,
        results -> SeasonPlanSheet.of(results.seasonPlan(), results.season().settings()));
    all.put(EventPackingSheet.NAME, results -> EventPackingSheet.of(results.packing()));
    all.put(
        "Weight by compartment",
        results ->
            WeightByCompartmentSheet.of(results.load(), results.spares().idle(), units(results)));
    all.put(
        "Stow plan", results -> StowPlanSheet.of(results.stow(), results.load(), units(results)));
    all.put(WhereItIsSheet.NAME, results -> WhereItIsSheet.of(results.onHand()));
    all.put(LabelsSheet.NAME, results -> LabelsSheet.of(results.season(), results.onHand()));
    all.put("Track record", results -> TrackRecordSheet.of(results.trackRecord()));
    all.put(InputChecksSheet.NAME, results -> InputChecksSheet.of(results.findings()));
    return all;
  }

  /** Names of all output sheets, in their order. */
  public static List<String> names() {
    List<String> names = new ArrayList<>(List.of(FRONT));
    names.addAll(BEHIND.keySet());
    return names;
  }

  /** Everything to show, worked out once. */
  public static Report of(Results results) {
    Collection<Function<Results, ReportSheet>> sheets = BEHIND.values();
    // Among several workbooks each keeps to its thread.
    List<ReportSheet> behind =
        (ForkJoinTask.inForkJoinPool() ? sheets.stream() : sheets.parallelStream())
            .map(sheet -> sheet.apply(results))
            .toList();
    List<Step> toDo = ToDo.of(results, behind);
    List<ReportSheet> all = new ArrayList<>();
    all.add(AfterTripSheet.of(results, toDo));
    all.addAll(behind);
    return new Report(toDo, all);
  }

  private static UnitSystem units(Results results) {
    return results.season().settings().units();
  }
}
