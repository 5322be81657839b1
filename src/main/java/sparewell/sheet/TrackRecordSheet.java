package sparewell.sheet;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sparewell.rates.record.TrackRecord;
import sparewell.table.Block;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The recommendations replayed on the trips behind. */
public final class TrackRecordSheet {
  private static final Columns<TrackRecord.Line> COLUMNS = Columns.of("Track record");

  private TrackRecordSheet() {}

  public static ReportSheet of(TrackRecord record) {
    Lines lines = new Lines();
    if (record.lines().stream().anyMatch(line -> line.predictions() > 0)) {
      lines.strong(Tone.NONE, followed(record.lines()));
      lines.plain(compared(record.lines()));
    }
    lines.plain(record.sentence());
    lines.note("Track record");
    if (record.fits() < record.trips()) {
      lines.small(
          "The rates were fitted anew %d times, more often in the beginning.", record.fits());
    }
    return new ReportSheet(
        "Track record",
        "How the recommendations would have done on the trips you have behind you",
        List.of(lines.block(), new Block.Rows(table(record))));
  }

  /** Run-outs had the advice been followed, floor and all, against three of each. */
  private static String followed(List<TrackRecord.Line> rules) {
    Map<String, TrackRecord.Line> byPolicy =
        rules.stream().collect(Collectors.toMap(TrackRecord.Line::policy, line -> line));
    TrackRecord.Line advice = byPolicy.get(TrackRecord.WITH_FLOOR);
    return Phrase.text(
        "Following the advice with its floor: %s in %d; three of each: %d.",
        Phrase.count(advice.runOuts(), "run-out"),
        advice.predictions(),
        byPolicy.get("flat three").runOuts());
  }

  private static String compared(List<TrackRecord.Line> rules) {
    return rules.stream()
        .filter(line -> line.runOutPercent().isPresent() && line.meanCarried().isPresent())
        .map(
            line ->
                Phrase.text(
                    "%s %.1f %% (%.2f of each carried)",
                    line.policy(),
                    line.runOutPercent().getAsDouble(),
                    line.meanCarried().getAsDouble()))
        .collect(Collectors.joining(", ", "How often a style would have run out on a trip: ", "."));
  }

  private static Table<TrackRecord.Line> table(TrackRecord record) {
    return COLUMNS.table(
        record.lines(),
        List.of(
            COLUMNS.column("policy", TrackRecord.Line::policy),
            COLUMNS.column("predictions", TrackRecord.Line::predictions),
            COLUMNS.column("run_outs", TrackRecord.Line::runOuts),
            COLUMNS.column("run_out_pct", TrackRecord.Line::runOutPercent),
            COLUMNS.column("mean_carried", TrackRecord.Line::meanCarried),
            COLUMNS.column("coverage_wanted", TrackRecord.Line::coverageWantedProbability),
            COLUMNS.column("coverage_got", TrackRecord.Line::coverageGotProbability)));
  }
}
