package sparewell.spares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.season.SeasonMaker.AS_OF;
import static sparewell.season.SeasonMaker.line;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sparewell.season.Cause;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

class IdleStyleTest {
  private final SeasonMaker maker =
      new SeasonMaker()
          .plain("Jig", "Frog", "Spoon")
          .style("Net")
          .atOnce(1, 1)
          .aboard("Jig", "", "B", 3)
          .aboard("Frog", "", "B", 4)
          .aboard("Spoon", "", "B", 6)
          .ashore("Spoon", "", "T", 9)
          .aboard("Net", "", "B", 1);

  private List<IdleStyle> idle() {
    return IdleStyle.of(maker.season(), maker.onHand());
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

  @Test
  void hoursOrLossesOfNothingShowNoUse() {
    maker
        .trip("old", AS_OF.minusMonths(15), 6, "Jig", 2)
        .trip("new", AS_OF.minusMonths(1), 6, "Frog", 0)
        .loss("new", "Jig", "", 0, Cause.SNAG);
    assertEquals(List.of("Jig", "Frog", "Spoon"), idle().stream().map(IdleStyle::style).toList());
    SeasonMaker empty = new SeasonMaker().plain("Jig").aboard("Jig", "", "B", 1);
    empty.trip("old", AS_OF.minusMonths(15), 6, "Jig", 0);
    assertTrue(
        IdleStyle.of(empty.season(), empty.onHand()).isEmpty(), "no hours logged, no judgement");
  }

  // 1.5 months before May 1 are April 1 and 15 days: March 17.
  @Test
  void halfAMonthIsFifteenDays() {
    maker
        .trip("old", LocalDate.of(2026, 3, 16), 6, "Jig", 2)
        .trip("new", LocalDate.of(2026, 3, 17), 6, "Frog", 2);
    List<IdleStyle> idle = IdleStyle.of(idleAfter(1.5), maker.onHand());
    assertEquals(List.of("Jig", "Spoon"), idle.stream().map(IdleStyle::style).toList());
  }

  private Season idleAfter(double months) {
    maker.idleAfterMonths = months;
    return maker.season();
  }

  @Test
  void piecesOfUnknownWeightAreCountedApart() {
    maker.trip("old", AS_OF.minusMonths(15), 6, "Jig", 2);
    ItemId jig = new ItemId("Jig", "", "");
    Place bow = new Place("B", "Bow");
    Optional<Mass> ten = Optional.of(Mass.of(10, MassUnit.GRAM));
    OnHand onHand =
        new OnHand(
            List.of(
                new Holding(jig, bow, false, 3, ten),
                new Holding(jig, new Place("C", "Bow"), false, 4, ten),
                new Holding(jig, bow, false, 2, Optional.empty()),
                new Holding(jig, new Place("D", "Bow"), false, 5, Optional.empty()),
                new Holding(jig, new Place("T", "Garage"), true, 50, ten)),
            List.of(),
            List.of());
    IdleStyle idle = IdleStyle.of(maker.season(), onHand).get(0);
    assertEquals(14, idle.pieces());
    assertEquals(7, idle.unweighedPieces());
    assertEquals(70, idle.knownWeight().in(MassUnit.GRAM), 1e-9);
  }
}
