package sparewell.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.table.ReportSheet;
import sparewell.units.UnitSystem;

/** All output sheets in their order; a new one is listed here. */
public final class ReportSheets {
  /** The front page, which stands before the angler's sheets; the others stand behind them. */
  public static final String FRONT = AfterTripSheet.NAME;

  private static final Map<String, Function<Results, ReportSheet>> BEHIND = behind();

  private ReportSheets() {}

  /** Output of a run: all that was found, with what the sheets themselves have to tell. */
  public record Report(Results results, List<Step> toDo, List<ReportSheet> sheets) {
    public Report {
      toDo = List.copyOf(toDo);
      sheets = List.copyOf(sheets);
    }
  }

  private static Map<String, Function<Results, ReportSheet>> behind() {
    Map<String, Function<Results, ReportSheet>> all = new LinkedHashMap<>();
    all.put(LossRatesSheet.NAME, results -> LossRatesSheet.of(results.rates()));
    all.put(SparesSheet.NAME, results -> SparesSheet.of(results.spares(), results.buys()));
    all.put(BuyListSheet.NAME, results -> BuyListSheet.of(results.buys(), results.offSeason()));
    all.put(SeasonPlanSheet.NAME, SeasonPlanSheet::of);
    all.put(EventPackingSheet.NAME, results -> EventPackingSheet.of(results.packing()));
    all.put(TripCardSheet.NAME, TripCardSheet::of);
    all.put(
        WeightByCompartmentSheet.NAME,
        results ->
            WeightByCompartmentSheet.of(results.load(), results.spares().idle(), units(results)));
    all.put(
        StowPlanSheet.NAME,
        results -> StowPlanSheet.of(results.stow(), results.load(), units(results)));
    all.put(WhereItIsSheet.NAME, results -> WhereItIsSheet.of(results.onHand(), results.season()));
    all.put(
        LabelsSheet.NAME,
        results -> LabelsSheet.of(results.season(), results.onHand(), results.stow()));
    all.put("Track record", results -> TrackRecordSheet.of(results.trackRecord()));
    return all;
  }

  public static List<String> names() {
    List<String> names = new ArrayList<>(List.of(FRONT));
    names.addAll(BEHIND.keySet());
    names.add(InputChecksSheet.NAME);
    return names;
  }

  public static Report of(Results found) {
    EntryFill entries = new EntryFill(found.typed(), units(found));
    List<ReportSheet> made =
        BEHIND.values().parallelStream().map(maker -> maker.apply(found)).toList();
    List<ReportSheet> filled = made.stream().map(entries::fill).toList();
    ReportSheet checks = entries.fill(AfterTripSheet.checks(found));
    List<Finding> unread =
        Stream.concat(
                entries.left().stream().map(ReportSheets::lost),
                found.typed().strays().stream()
                    .map(stray -> Finding.of(Code.TICK_BESIDE_LINE, stray.at(), stray.typed())))
            .toList();
    Results results = found.without(entries.left(), unread);
    List<ReportSheet> behind = new ArrayList<>(filled);
    behind.add(InputChecksSheet.of(results.findings()));
    List<Step> toDo = ToDo.of(results, behind);
    List<ReportSheet> all = new ArrayList<>();
    all.add(AfterTripSheet.of(results, toDo, checks.blocks()));
    all.addAll(behind);
    return new Report(results, toDo, all);
  }

  private static Finding lost(Typed.Row row) {
    String typed =
        row.entries().values().stream().map(Ticks::plain).collect(Collectors.joining(", "));
    return Finding.of(Code.TICK_WITHOUT_LINE, Cell.ofSheet(row.at().sheet()), typed, row.words());
  }

  private static UnitSystem units(Results results) {
    return results.season().settings().units();
  }
}
