package sparewell.rates.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Input of a fit. */
class FitInputTest {
  @Test
  void theMixIsTheShareOfHoursInEachCover() {
    List<Observation> log =
        List.of(
            new Observation(0, 0, 3, 1, 0, 0, false, 1),
            new Observation(0, 0, 5, 2, Observation.MIX, 0, false, 1),
            new Observation(1, 0, 1, 1, 1, 0, false, 1),
            new Observation(0, 0, 4, 1, 0, 0, true, 1));
    double[] mix = new FitInput(List.of(0, 0), 1, 3, log).mix();
    assertEquals(7 / 8.0, mix[0]);
    assertEquals(1 / 8.0, mix[1]);
    assertEquals(0, mix[2]);
    assertEquals(0.25, new FitInput(List.of(0), 1, 4, List.of()).mix()[3]);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1, -1, 0, 1",
    "1, 0, -1, 0, 1",
    "1, 1, -3, 0, 1",
    "1, 1, -1, -1, 1",
    "1, 1, -1, 0, 0",
    "1, 1, -1, 0, 1.001",
    "NaN, 1, -1, 0, 1"
  })
  void anImpossibleObservationIsRefused(
      double hours, double days, int cover, int lost, double weight) {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Observation(0, 0, hours, days, cover, lost, false, weight));
  }
}
