package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;
import sparewell.stow.StowPlan;
import sparewell.stow.StowPlanner;
import sparewell.table.Block;
import sparewell.table.LabelGrid;
import sparewell.table.LabelGrid.Label;
import sparewell.table.LabelGrid.Size;
import sparewell.table.LabelGrid.Words;
import sparewell.table.ReportSheet;

/** The labels of a few boxes, cell by cell. */
class LabelsSheetTest {
  private static ReportSheet sheet() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig", "Worm")
            .aboard("Jig", "Bone", "J1", 3)
            .aboard("Worm", "Boulder", "J2", 3);
    for (int i = 0; i < 60; i++) {
      maker.ashore("Worm", "Shade " + i, "Tub", 5);
    }
    Season season = maker.box("J1").box("J2").box("New").boxAshore("Tub").season();
    StowPlan stow = StowPlanner.plan(season, maker.onHand());
    return LabelsSheet.of(season, maker.onHand(), stow);
  }

  private static List<Label> labels() {
    return ((LabelGrid) sheet().blocks().get(0)).labels();
  }

  private static List<String> body(Label label) {
    return label.body().stream().map(Words::text).toList();
  }

  @Test
  void everyBoxHasOnePair() {
    assertEquals(8, labels().size());
    // However much lies in a bin ashore, its label stays short.
    assertTrue(labels().get(6).body().size() <= 2, body(labels().get(6)).toString());
    assertEquals("60 items", labels().get(6).body().get(1).text());
  }

  @Test
  void oneCodeStandsForOneColourInTheWholeWorkbook() {
    assertEquals(List.of("Jig", "BO"), body(labels().get(0)));
    assertEquals(List.of("Worm", "BOU"), body(labels().get(2)));
    assertEquals(List.of("Jig", "BO"), body(labels().get(1)), "the side shows colours too");
    long codes = ((Block.Rows) sheet().blocks().get(1)).table().rows().stream().distinct().count();
    assertEquals(62, codes);
  }

  @Test
  void aUnitThatAllSizesShareIsSaidOnce() {
    assertEquals(
        "1/8, 3/16, 1/4\u00a0oz",
        LabelsSheet.joined(set("1/8\u00a0oz", "3/16\u00a0oz", "1/4\u00a0oz")));
    assertEquals("S, M", LabelsSheet.joined(set("S", "M")));
    assertEquals("3\u00a0in, 7\u00a0cm", LabelsSheet.joined(set("3\u00a0in", "7\u00a0cm")));
    assertEquals("4\u00a0in", LabelsSheet.joined(set("4\u00a0in")));
  }

  private static Set<String> set(String... sizes) {
    return new LinkedHashSet<>(List.of(sizes));
  }

  @Test
  void anEmptyBoxGetsALineToWriteOn() {
    Label empty = labels().get(4);
    assertEquals(new Words("New", Size.LARGE), empty.head().get(0));
    assertTrue(empty.body().get(0).text().matches("_+"), body(empty).toString());
  }
}
