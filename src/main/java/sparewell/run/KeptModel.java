package sparewell.run;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;
import sparewell.rates.LossModel;
import sparewell.rates.Others;
import sparewell.rates.record.TrackRecord;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Settings;
import sparewell.season.StockRow;
import sparewell.season.Style;
import sparewell.season.StyleHours;
import sparewell.season.Trip;

/**
 * The loss model and the track record of the workbook analysed last. While a program runs on and
 * the angler changes what they do not rest on, such as counts and ticks, they are taken again, with
 * what the model was asked so far. Both follow from the records named here and from nothing else.
 */
final class KeptModel {
  private static final AtomicReference<Kept> LAST = new AtomicReference<>();

  /** Most runs with one model: what it was asked grows with every stock. */
  private static final int MOST_RUNS = 25;

  private record Log(
      Settings settings,
      List<Style> styles,
      List<ItemId> stocked,
      List<Trip> trips,
      List<StyleHours> styleHours,
      List<Loss> losses,
      List<Event> events) {
    static Log of(Season season) {
      return new Log(
          season.settings(),
          season.styles(),
          season.stock().stream().map(StockRow::item).distinct().toList(),
          season.trips(),
          season.styleHours(),
          season.losses(),
          season.events());
    }
  }

  private record Kept(Log log, LossModel model, Supplier<TrackRecord> record, int runs) {}

  private final Season season;
  private final Log log;
  private final Optional<Kept> last;
  private final Supplier<TrackRecord> record;

  /**
   * Begins.
   *
   * @param replay how to make a track record, beside this thread
   */
  KeptModel(Season season, Function<Season, Supplier<TrackRecord>> replay) {
    this.season = season;
    log = Log.of(season);
    last =
        Optional.ofNullable(LAST.get())
            .filter(kept -> kept.runs() < MOST_RUNS && kept.log().equals(log));
    record = last.map(Kept::record).orElseGet(() -> replay.apply(season));
  }

  Supplier<TrackRecord> record() {
    return record;
  }

  /** The model; one that leans on the experience of others is always made anew. */
  LossModel model(Optional<Others> others) {
    if (others.isPresent()) {
      return LossModel.fit(season, others);
    }
    LossModel model = last.map(Kept::model).orElseGet(() -> LossModel.fit(season));
    LAST.set(new Kept(log, model, record, last.map(Kept::runs).orElse(0) + 1));
    return model;
  }
}
