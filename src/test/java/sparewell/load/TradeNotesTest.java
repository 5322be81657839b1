package sparewell.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.load.LoadSheetTest.report;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.load.LoadReport.TradeNote;
import sparewell.stow.Boats;

/** Notes on boxes that stand against what the trade does. */
class TradeNotesTest {
  @Test
  void notesBoxesAgainstTheTradesRule() {
    // Common practice, no source: light forward, heavy aft.
    LoadReport report =
        report(
            new Boats()
                .compartment("Stern", 50, 0, 0)
                .compartment("Bow", 450, 0, 0)
                .box("Weights", "Bow", 1)
                .stock("Sinkers", "Weights", "Bow", 100, 0.05)
                .stock("Swivels", "Weights", "Bow", 100, 0.001)
                .box("Crankbaits", "Stern", 1)
                .box("Middling", "Bow", 2));
    assertEquals(1, report.tradeNotes().size(), "Crankbaits stand well by the plan");
    TradeNote weights = report.tradeNotes().get(0);
    assertEquals("Weights", weights.box());
    assertTrue(weights.heavyForward());
    assertEquals(Optional.of("Sinkers"), weights.mainStyle());
    assertEquals(Optional.of("Stern"), weights.planMovesTo());
  }

  @Test
  void featherweightsAndTriflesAreNotNoted() {
    LoadReport report =
        report(
            new Boats()
                .compartment("Stern", 50, 0, 0)
                .compartment("Bow", 450, 0, 0)
                .box("Empty", "Stern", Optional.of(Boats.kg(0.3)), true, false)
                .box("Small", "Bow", Optional.of(Boats.kg(0.4)), true, false)
                .box("Median", "Stern", Optional.of(Boats.kg(10)), true, false)
                .box("Hardly heavier", "Bow", Optional.of(Boats.kg(10.1)), true, false)
                .box("Heavy", "Stern", Optional.of(Boats.kg(20)), true, false));
    assertEquals(List.of(), report.tradeNotes());
  }

  @Test
  void tradeNotesStandByWeightAndCompareWithTheMiddleOfTheHeapAndOfTheBoat() {
    // Weights 1, 2, 4, 8 kg: the median is 3. Compartments from 0.5 to 4.5 m: the middle is 2.5.
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Middle", 250, 0, 0)
            .compartment("Bow", 450, 0, 0)
            .compartment("Garage", 3000, 0, 0, false, true)
            .box("One", "Stern", Optional.of(Boats.kg(1)), true, false)
            .box("Two", "Bow", Optional.of(Boats.kg(2)), true, false)
            .box("Four", "Bow", Optional.of(Boats.kg(4)), true, false)
            .box("Eight", "Bow", Optional.of(Boats.kg(8)), true, false);
    assertEquals(
        List.of("Eight true", "Four true", "One false"),
        report(boats).tradeNotes().stream()
            .map(note -> note.box() + " " + note.heavyForward())
            .toList());
    Boats middle =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Middle", 250, 0, 0)
            .compartment("Bow", 450, 0, 0)
            .box("Light", "Middle", Optional.of(Boats.kg(1)), true, false)
            .box("Median", "Bow", Optional.of(Boats.kg(2)), true, false)
            .box("Heavy", "Middle", Optional.of(Boats.kg(8)), true, false);
    assertEquals(List.of(), report(middle).tradeNotes(), "neither ahead nor behind, or the median");
  }

  @Test
  void ofStylesThatWeighTheSameTheFirstByNameNamesTheBox() {
    Boats boats =
        new Boats()
            .compartment("Stern", 50, 0, 0)
            .compartment("Bow", 450, 0, 0)
            .box("A", "Bow", Optional.of(Boats.kg(1)), true, false)
            .box("B", "Stern", Optional.of(Boats.kg(1)), true, false)
            .box("C", "Stern", Optional.of(Boats.kg(1.5)), true, false)
            .stock("Zinc", "A", "Bow", 10, 0.1)
            .stock("Brass", "A", "Bow", 20, 0.05)
            .stock("Loose", "", "Bow", 90, 0.1)
            .stock("Gone", "B", "Stern", 0, 0.1);
    List<TradeNote> notes = report(boats).tradeNotes();
    assertEquals(List.of("A", "B"), notes.stream().map(TradeNote::box).toList());
    assertEquals(Optional.of("Brass"), notes.get(0).mainStyle());
    assertEquals(Optional.empty(), notes.get(1).mainStyle(), "none of it is left");
    assertEquals(Optional.empty(), notes.get(0).planMovesTo(), "it stays put");
  }
}
