package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import sparewell.season.Cause;
import sparewell.season.SeasonMaker;

class AfterEventBlocksTest {
  /** Five trips and the event: a jig thrown and lost, a worm lost without hours, no prices. */
  @Test
  void everyPieceLostIsAccountedFor() {
    SeasonMaker maker =
        new SeasonMaker()
            .plain("Jig", "Worm")
            .aboard("Jig", "", "J1", 9)
            .aboard("Worm", "", "J1", 9);
    LocalDate first = AS_OF.minusDays(60);
    for (int t = 0; t < 6; t++) {
      maker
          .trip("t" + t, first.plusDays(5L * t), 8, "Jig", 4)
          .loss("t" + t, "Jig", "", 1, Cause.SNAG);
    }
    maker.loss("t5", "Worm", "", 3, Cause.SNAG).event("Cup", first.plusDays(25), 8, 1);
    String text = AfterEventBlocks.of(AfterTripSheetTest.results(maker)).toString();
    assertTrue(text.contains("You lost 4 pieces (4 without a price); the forecast"), text);
    assertTrue(text.contains("Lost without hours, so without a forecast: 3 Worm."), text);
  }
}
