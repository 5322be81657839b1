package sparewell.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;
import sparewell.finding.Cell;
import sparewell.rates.LossModel;
import sparewell.rates.Others;
import sparewell.rates.record.RunningRecord;
import sparewell.rates.record.TrackRecord;
import sparewell.season.Boat;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.StockRow;

/**
 * The loss model and the track record of the workbook analysed last. While a program runs on and
 * the angler changes what they do not rest on, such as counts and ticks, they are taken again, with
 * what the model was asked so far. They are given the records they are known again by, and no more.
 */
final class KeptModel {
  private static final AtomicReference<Kept> LAST = new AtomicReference<>();

  private static final AtomicReference<RunningRecord> RECORD = new AtomicReference<>();

  /** Most runs with one model: what it was asked grows with every stock. */
  private static final int MOST_RUNS = 25;

  private record Kept(Season log, LossModel model, Supplier<TrackRecord> record, int runs) {}

  private final Season log;
  private final Optional<Kept> last;
  private final Supplier<TrackRecord> record;

  /** Begins; {@code replay} makes a track record beside this thread. */
  KeptModel(Season season, Function<Season, Supplier<TrackRecord>> replay) {
    log = log(season);
    last =
        Optional.ofNullable(LAST.get())
            .filter(kept -> kept.runs() < MOST_RUNS && kept.log().equals(log));
    record = last.map(Kept::record).orElseGet(() -> replay.apply(log));
  }

  /** The track record of a log; that of the last one is taken up where the log goes on from it. */
  static TrackRecord record(Season log) {
    RunningRecord last = RECORD.getAndSet(null); // nobody else goes on from it meanwhile
    RunningRecord record = last != null && last.goesOnTo(log) ? last : new RunningRecord(log);
    TrackRecord now = record.upTo(log);
    RECORD.set(record);
    return now;
  }

  /** A season without what the log does not tell: of the stock, only which items there are. */
  private static Season log(Season season) {
    Place nowhere = new Place("", "");
    return new Season(
        season.settings(),
        season.styles(),
        season.stock().stream()
            .map(StockRow::item)
            .distinct()
            .map(
                item ->
                    new StockRow(
                        item,
                        nowhere,
                        0,
                        Optional.empty(),
                        Optional.empty(),
                        OptionalInt.empty(),
                        Optional.empty(),
                        Cell.NOWHERE))
            .toList(),
        List.of(),
        List.of(),
        season.trips(),
        season.styleHours(),
        season.losses(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        season.events(),
        List.of(),
        Boat.UNKNOWN);
  }

  Supplier<TrackRecord> record() {
    return record;
  }

  /** The model; one that leans on the experience of others is always made anew. */
  LossModel model(Optional<Others> others) {
    if (others.isPresent()) {
      return LossModel.fit(log, others);
    }
    LossModel model = last.map(Kept::model).orElseGet(() -> LossModel.fit(log));
    LAST.set(new Kept(log, model, record, last.map(Kept::runs).orElse(0) + 1));
    return model;
  }
}
