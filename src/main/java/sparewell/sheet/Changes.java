package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import sparewell.season.ItemId;
import sparewell.sheet.AfterTripSheet.Figure;
import sparewell.spares.SparesRow;
import sparewell.table.Block;

/** What changed since the last run, by its figures and its counts to carry. */
final class Changes {
  private static final int MOST_ITEMS = 3;

  private Changes() {}

  static List<Block.Line> of(Results results, List<Figure> figures) {
    List<Block.Line> lines = new ArrayList<>();
    if (results.lastRun().isEmpty()) {
      lines.add(Block.Line.heading("What changed since the last run"));
      lines.add(Block.Line.of("This is the first run on this workbook."));
      return lines;
    }
    LastRun last = results.lastRun().get();
    String date = last.figures().getOrDefault(Figures.DATE, "");
    lines.add(
        Block.Line.heading(
            "What changed since the last run" + (date.isEmpty() ? "" : " (as of " + date + ")")));
    for (Figure figure : figures) {
      if (!figure.before().isEmpty()
          && !figure.name().equals(Figures.DATE)
          && !figure.before().equals(figure.now())) {
        lines.add(
            Block.Line.of(
                figure.name().replace("… ", "Chance ")
                    + ": now "
                    + figure.now()
                    + ", was "
                    + figure.before()
                    + "."));
      }
    }
    carries(results.spares().rows(), last.carries(), lines);
    if (lines.size() == 1) {
      lines.add(Block.Line.of("Nothing that shows in these figures."));
    }
    return lines;
  }

  /** Names the items whose count to carry changed most. */
  private static void carries(
      List<SparesRow> rows, Map<ItemId, Integer> before, List<Block.Line> lines) {
    List<SparesRow> changed =
        rows.stream()
            .filter(row -> before.containsKey(row.item()) && change(row, before) != 0)
            .sorted(Comparator.comparingInt(row -> -Math.abs(change(row, before))))
            .toList();
    for (SparesRow row : changed.subList(0, Math.min(MOST_ITEMS, changed.size()))) {
      lines.add(
          Block.Line.of(
              "Carry "
                  + row.carry()
                  + " "
                  + row.item().spoken()
                  + ", was "
                  + before.get(row.item())
                  + "."));
    }
    if (changed.size() > MOST_ITEMS) {
      lines.add(
          Block.Line.of(
              "The count to carry changed for "
                  + Phrase.count(changed.size() - MOST_ITEMS, "further item")
                  + "."));
    }
  }

  private static int change(SparesRow row, Map<ItemId, Integer> before) {
    return row.carry() - before.get(row.item());
  }
}
