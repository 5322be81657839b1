package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sparewell.rates.StyleRate;
import sparewell.sheet.AfterTripSheet.Figure;
import sparewell.spares.SparesRow;
import sparewell.table.Block;

/** Changes since the last run: rows posted, pieces lost, items newly short, figures. */
final class Changes {
  private static final int MOST_ITEMS = 3;

  private final Results results;
  private final LastRun last;
  private final List<Block.Line> lines = new ArrayList<>();

  private Changes(Results results, LastRun last) {
    this.results = results;
    this.last = last;
  }

  static List<Block.Line> of(Results results, List<Figure> figures) {
    if (results.lastRun().isEmpty()) {
      return List.of(
          Block.Line.heading("What changed since the last run"),
          Block.Line.of("This is the first run on this workbook."));
    }
    Changes changes = new Changes(results, results.lastRun().get());
    String date = changes.last.figures().getOrDefault(Figures.DATE, "");
    changes.lines.add(
        Block.Line.heading(
            "What changed since the last run" + (date.isEmpty() ? "" : " (as of " + date + ")")));
    changes.posted();
    changes.losses();
    changes.shortage();
    changes.figures(figures);
    changes.carries();
    if (changes.lines.size() == 1) {
      changes.say("Nothing that shows in these figures.");
    }
    return changes.lines;
  }

  private void say(String sentence) {
    lines.add(Block.Line.of(sentence));
  }

  private void posted() {
    Map<String, Integer> posted = results.entered().posted();
    if (!posted.isEmpty()) {
      say(
          posted.entrySet().stream()
              .map(sheet -> Phrase.count(sheet.getValue(), "row") + " of " + sheet.getKey())
              .collect(Collectors.joining(", ", "Posted: ", ".")));
    }
  }

  /** Losses logged since, by style. */
  private void losses() {
    List<String> lost = new ArrayList<>();
    for (StyleRate rate : results.rates().styles()) {
      int more = rate.lostPieces() - last.lost().getOrDefault(rate.style(), rate.lostPieces());
      if (more > 0) {
        lost.add(more + " " + rate.style());
      }
    }
    if (!lost.isEmpty()) {
      say("Losses logged since: " + listed(lost) + ".");
    }
  }

  private void shortage() {
    List<String> newly = new ArrayList<>();
    List<String> solved = new ArrayList<>();
    for (SparesRow row : results.spares().rows()) {
      Double before = last.runOuts().get(row.item());
      double most = 1 - row.chanceWantedProbability();
      if (before == null || !row.used()) {
        continue;
      }
      if (row.runOutNowProbability() > most && before <= most) {
        newly.add(row.item().spoken());
      } else if (row.runOutNowProbability() <= most && before > most) {
        solved.add(row.item().spoken());
      }
    }
    if (!newly.isEmpty()) {
      say("Newly short: " + listed(newly) + ".");
    }
    if (!solved.isEmpty()) {
      say("Short no more: " + listed(solved) + ".");
    }
  }

  private static String listed(List<String> all) {
    int more = all.size() - MOST_ITEMS;
    return String.join(", ", all.subList(0, Math.min(MOST_ITEMS, all.size())))
        + (more > 0 ? " and " + more + " more" : "");
  }

  private void figures(List<Figure> figures) {
    for (Figure figure : figures) {
      if (!figure.before().isEmpty()
          && !figure.name().equals(Figures.DATE)
          && !figure.before().equals(figure.now())) {
        say(
            figure.spoken()
                + ": now "
                + figure.now()
                + ", was "
                + figure.before()
                + why(figure)
                + ".");
      }
    }
  }

  /** A chance that rises although pieces were lost looks like a mistake; it is not. */
  private String why(Figure figure) {
    boolean lostMore =
        results.rates().styles().stream()
            .anyMatch(
                rate ->
                    rate.lostPieces() > last.lost().getOrDefault(rate.style(), rate.lostPieces()));
    boolean postedMore = !results.entered().posted().isEmpty();
    return figure.name().equals(Figures.CHANCE_NOW) && lostMore && !postedMore && safer()
        ? ", although pieces were lost: the loss rates fell by more than the stock"
        : "";
  }

  /** Returns whether fewer items in use are expected to run out than before, without any added. */
  private boolean safer() {
    double before = 0;
    double now = 0;
    for (SparesRow row : results.spares().rows()) {
      if (row.used() && last.runOuts().containsKey(row.item())) {
        before += last.runOuts().get(row.item());
        now += row.runOutNowProbability();
      }
    }
    return now < before;
  }

  /** Names the items whose count to carry changed most. */
  private void carries() {
    List<SparesRow> changed =
        results.spares().rows().stream()
            .filter(row -> last.carries().containsKey(row.item()) && change(row) != 0)
            .sorted(Comparator.comparingInt(row -> -Math.abs(change(row))))
            .toList();
    for (SparesRow row : changed.subList(0, Math.min(MOST_ITEMS, changed.size()))) {
      say(
          "Carry "
              + row.carry()
              + " "
              + row.item().spoken()
              + ", was "
              + last.carries().get(row.item())
              + ".");
    }
    if (changed.size() > MOST_ITEMS) {
      say(
          "The count to carry changed for "
              + Phrase.count(changed.size() - MOST_ITEMS, "further item")
              + ".");
    }
  }

  private int change(SparesRow row) {
    return row.carry() - last.carries().get(row.item());
  }
}
