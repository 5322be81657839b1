package sparewell.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SpokenTest {
  /** 1 lb = 0.45359237 kg and 1 in = 0.0254 m, both exactly (1959). */
  @Test
  void aLittleIsNotShownAsNothing() {
    assertEquals("0.02 lb", Spoken.mass(Mass.of(0.02, MassUnit.POUND), UnitSystem.US));
    assertEquals("0.3 lb·in", Spoken.moment(0.3 * 0.45359237 * 0.0254, UnitSystem.US));
    assertEquals("3 lb·in", Spoken.moment(3 * 0.45359237 * 0.0254, UnitSystem.US));
    assertEquals("0 lb·in", Spoken.moment(1e-15, UnitSystem.US));
    assertEquals("0.0 lb", Spoken.mass(Mass.of(0, MassUnit.POUND), UnitSystem.US));
  }
}
