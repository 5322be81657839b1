package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.spares.SeasonMaker.AS_OF;
import static sparewell.spares.SeasonMaker.line;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.season.Cause;
import sparewell.units.MassUnit;

class IdleFinderTest {
  private final SeasonMaker maker =
      new SeasonMaker()
          .style("Jig")
          .add()
          .style("Frog")
          .add()
          .style("Spoon")
          .add()
          .style("Net")
          .atOnce(1, 1)
          .add()
          .aboard("Jig", "", "B", 3)
          .aboard("Frog", "", "B", 4)
          .aboard("Spoon", "", "B", 6)
          .ashore("Spoon", "", "T", 9)
          .aboard("Net", "", "B", 1);

  private List<IdleStyle> idle() {
    return IdleFinder.of(maker.season(), maker.onHand());
  }

  @Test
  void listsStylesNotThrownForTheSetMonthsWithTheirWeightAndMoments() {
    maker
        .trip("old", AS_OF.minusMonths(15), 6, "Frog", 2)
        .trip("new", AS_OF.minusMonths(1), 6, "Jig", 2);
    List<IdleStyle> idle = idle();
    assertEquals(List.of("Frog", "Spoon"), idle.stream().map(IdleStyle::style).toList());
    assertEquals(Optional.of(AS_OF.minusMonths(15)), idle.get(0).lastThrown());
    assertEquals(Optional.empty(), idle.get(1).lastThrown());
    // 6 pieces of 10 g, 2 m before the transom, 0.5 m to port; the 9 ashore weigh nothing here.
    assertEquals(60, idle.get(1).knownWeight().in(MassUnit.GRAM), 1e-9);
    assertEquals(0.12, idle.get(1).momentKgM(), 1e-12);
    assertEquals(-0.03, idle.get(1).sideMomentKgM(), 1e-12);
  }

  @Test
  void aLossOrAPlanShowsThatAStyleIsInUse() {
    maker
        .trip("old", AS_OF.minusMonths(15), 6, "Jig", 2)
        .trip("new", AS_OF.minusMonths(1), 6, "Jig", 2)
        .loss("new", "Spoon", "", 1, Cause.SNAG)
        .event("Cup", AS_OF.plusDays(40), 8, 1, line("Frog", 2));
    assertTrue(idle().isEmpty());
  }

  @Test
  void aLogShorterThanTheSetMonthsTellsNothing() {
    maker.trip("new", AS_OF.minusMonths(3), 6, "Jig", 2);
    assertTrue(idle().isEmpty());
  }
}
