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
  private final Lines lines = new Lines();

  private Changes(Results results, LastRun last) {
    this.results = results;
    this.last = last;
  }

  static Block of(Results results, List<Figure> figures) {
    if (results.lastRun().isEmpty()) {
      return new Lines()
          .heading("What changed since the last run")
          .plain("This is the first run on this workbook.")
          .block();
    }
    Changes changes = new Changes(results, results.lastRun().get());
    String date = changes.last.figures().getOrDefault(Figures.DATE, "");
    changes.lines.heading(
        "What changed since the last run" + (date.isEmpty() ? "" : " (as of " + date + ")"));
    changes.posted();
    changes.losses();
    changes.shortage();
    changes.figures(figures);
    changes.carries();
    if (changes.lines.list().size() == 1) {
      changes.lines.plain("Nothing that shows in these figures.");
    }
    return changes.lines.block();
  }

  private void posted() {
    Map<String, Integer> posted = results.typed().posted();
    if (!posted.isEmpty()) {
      lines.plain(
          posted.entrySet().stream()
              .map(sheet -> Phrase.count(sheet.getValue(), "row") + " of " + sheet.getKey())
              .collect(Collectors.joining(", ", "Posted: ", ".")));
    }
  }

  private void losses() {
    List<String> lost =
        results.rates().styles().stream()
            .filter(rate -> lostSince(rate) > 0)
            .map(rate -> lostSince(rate) + " " + rate.style())
            .toList();
    list("Losses logged since", lost);
  }

  private int lostSince(StyleRate rate) {
    return rate.lostPieces() - last.lost().getOrDefault(rate.style(), rate.lostPieces());
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
    list("Newly short", newly);
    list("Short no more", solved);
  }

  private void list(String what, List<String> all) {
    int more = all.size() - MOST_ITEMS;
    String first = String.join(", ", all.subList(0, Math.min(MOST_ITEMS, all.size())));
    if (!all.isEmpty()) {
      lines.plain(what + ": " + first + (more > 0 ? " and " + more + " more" : "") + ".");
    }
  }

  private void figures(List<Figure> figures) {
    for (Figure figure : figures) {
      if (!figure.before().isEmpty()
          && !figure.name().equals(Figures.DATE)
          && !figure.before().equals(figure.now())) {
        lines.plain(
            "%s: now %s, was %s%s.", figure.name(), figure.now(), figure.before(), why(figure));
      }
    }
  }

  /** A chance that rises although pieces were lost looks like a mistake; it is not. */
  private String why(Figure figure) {
    boolean lostMore = results.rates().styles().stream().anyMatch(rate -> lostSince(rate) > 0);
    boolean postedMore = !results.typed().posted().isEmpty();
    return figure.name().equals(Figures.CHANCE_NOW) && lostMore && !postedMore && safer()
        ? ", although pieces were lost: the loss rates fell by more than the stock"
        : "";
  }

  /** True where fewer of the same items in use are expected to run out than before. */
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

  private void carries() {
    List<SparesRow> changed =
        results.spares().rows().stream()
            .filter(row -> last.carries().containsKey(row.item()) && change(row) != 0)
            .sorted(Comparator.comparingInt(row -> -Math.abs(change(row))))
            .toList();
    for (SparesRow row : changed.subList(0, Math.min(MOST_ITEMS, changed.size()))) {
      lines.plain(
          "Carry %d %s, was %d.", row.carry(), row.item().spoken(), last.carries().get(row.item()));
    }
    if (changed.size() > MOST_ITEMS) {
      lines.plain(
          "The count to carry changed for %s.",
          Phrase.count(changed.size() - MOST_ITEMS, "further item"));
    }
  }

  private int change(SparesRow row) {
    return row.carry() - last.carries().get(row.item());
  }
}
