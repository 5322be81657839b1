package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.sheet.AfterTripSheetTest.plenty;
import static sparewell.sheet.AfterTripSheetTest.results;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.season.ItemId;
import sparewell.season.SeasonMaker;
import sparewell.table.Block;

/** Changes since the last run, with their reasons. */
class ChangedSinceTest {
  private static List<String> front(Results results) {
    List<String> lines = new ArrayList<>();
    for (Block block : ReportSheets.of(results).sheets().get(0).blocks()) {
      if (block instanceof Block.Text text) {
        text.lines().forEach(line -> lines.add(line.text()));
      }
    }
    return lines;
  }

  @Test
  void saysWhatChangedSinceTheLastRun() {
    ItemId black = new ItemId("Jig", "", "black");
    LastRun before =
        new LastRun(
            Map.of(Figures.DATE, "2026-04-20", "Trips in the log", "0"),
            Map.of(black, 77),
            Map.of(black, 0.9),
            Map.of("Jig", 0));
    SeasonMaker maker = plenty();
    List<String> lines = front(results(maker, maker.season(), List.of(), Optional.of(before)));
    assertTrue(lines.contains("What changed since the last run (as of 2026-04-20)"));
    assertTrue(lines.contains("Trips in the log: now 1, was 0."), lines.toString());
    assertTrue(
        lines.stream().anyMatch(line -> line.matches("Carry \\d+ Jig black, was 77\\.")),
        lines.toString());
    assertTrue(lines.contains("Losses logged since: 2 Jig."), lines.toString());
    assertTrue(lines.contains("Short no more: Jig black."), lines.toString());
    assertTrue(front(results(maker)).contains("This is the first run on this workbook."));
  }

  @Test
  void aChanceThatRisesAfterLossesIsExplained() {
    ItemId black = new ItemId("Jig", "", "black");
    SeasonMaker maker = plenty();
    LastRun before =
        new LastRun(
            Map.of(Figures.DATE, "2026-04-20", Figures.CHANCE_NOW, "31 %, poor"),
            Map.of(),
            Map.of(black, 0.9),
            Map.of("Jig", 1));
    List<String> lines = front(results(maker, maker.season(), List.of(), Optional.of(before)));
    assertTrue(
        lines.stream()
            .anyMatch(
                line ->
                    line.endsWith(
                        "was 31 %, poor, although pieces were lost: the loss rates fell by more than"
                            + " the stock.")),
        lines.toString());
  }
}
