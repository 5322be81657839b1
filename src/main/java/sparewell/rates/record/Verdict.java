package sparewell.rates.record;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Says which policy of a track record did better. */
final class Verdict {
  private Verdict() {}

  /**
   * The sentence.
   *
   * @param trips trips logged
   * @param wantedRunOuts run-outs to be expected if the wanted chances held exactly
   */
  static String of(int trips, List<TrackRecord.Line> lines, double wantedRunOuts) {
    if (trips <= Replay.KNOWN_FIRST) {
      return "Too little history to tell: the record starts with the fifth trip, and "
          + (trips == 0 ? "none is logged yet." : trips + " are logged.");
    }
    int n = lines.get(0).predictions();
    // Fewer wanted run-outs than this cannot be told from none.
    if (wantedRunOuts < 5) {
      return String.format(
          "Too little history to tell: with %d predictions even the wanted chance would mean fewer"
              + " than 5 run-outs.",
          n);
    }
    double spread = Math.sqrt(wantedRunOuts * (1 - wantedRunOuts / n));
    TrackRecord.Line best = null;
    for (TrackRecord.Line line : lines) {
      boolean keeps = line.runOuts() <= wantedRunOuts + 1.645 * spread;
      if (keeps
          && (best == null
              || line.meanCarried().getAsDouble() < best.meanCarried().getAsDouble())) {
        best = line;
      }
    }
    String wanted =
        String.format(Locale.ROOT, "%.1f %% run-outs were wanted at most", 100 * wantedRunOuts / n);
    if (best == null) {
      TrackRecord.Line fewest =
          lines.stream().min(Comparator.comparingInt(TrackRecord.Line::runOuts)).orElseThrow();
      return wanted + " and no rule kept to it; the " + named(fewest, " came closest, with ");
    }
    String kept =
        best.runOuts() > wantedRunOuts
            ? " carried the fewest pieces, and was above that by no more than chance explains: "
            : " kept to it with the fewest pieces: ";
    return wanted + "; the " + named(best, kept);
  }

  private static String named(TrackRecord.Line line, String how) {
    return String.format(
        Locale.ROOT,
        "%s%s%.1f %% run-outs with %.1f pieces of a style on a trip.",
        line.policy(),
        how,
        line.runOutPercent().getAsDouble(),
        line.meanCarried().getAsDouble());
  }
}
