package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import sparewell.experience.Club;
import sparewell.experience.Normal;

class AmongOthersTest {
  private static final double Z = 1.6448536269514722;

  private static Club.Typical typical(Club.Source source) {
    return new Club.Typical(new Normal(Math.log(0.1), 0.01), 0.04, source, 9);
  }

  private static AmongOthers of(double rate, double deviation, boolean thrown) {
    double log = Math.log(rate);
    return AmongOthers.of(
        typical(Club.Source.STYLE), 0.6, log - Z * deviation, log + Z * deviation, thrown);
  }

  @Test
  void aRatioCarriesTheDoubtOfBothSides() {
    AmongOthers.Times times = of(0.18, 0.2, true).times().orElseThrow();
    assertEquals(1.8, times.middle(), 1e-9);
    double wide = Math.exp(Z * Math.sqrt(0.04 + 0.01));
    assertEquals(1.8 / wide, times.low90(), 1e-9);
    assertEquals(1.8 * wide, times.high90(), 1e-9);
    assertTrue(times.clear());
    assertTrue(of(0.05, 0.2, true).times().orElseThrow().clear());
    assertFalse(of(0.13, 0.2, true).times().orElseThrow().clear());
  }

  @Test
  void whatIsNotComparableIsNotCompared() {
    assertTrue(of(0.18, 0.2, false).times().isEmpty());
    AmongOthers family = AmongOthers.of(typical(Club.Source.FAMILY), 0.2, -2, -1, true);
    assertTrue(family.times().isEmpty());
    assertEquals(0, family.othersShare());
    assertEquals(0.8, family.familyShare(), 1e-12);
  }

  @Test
  void sharesAddUpToOne() {
    AmongOthers among = of(0.18, 0.2, true);
    assertEquals(0.3, among.othersShare(), 1e-12); // three quarters of the variance go, of 40 %
    assertEquals(1, 0.6 + among.othersShare() + among.familyShare(), 1e-12);
  }
}
