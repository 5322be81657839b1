package sparewell.save.append;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Areas of cells and the letters of columns. */
class AreaTest {
  /** XFD is the last column: ECMA-376 part 1, 18.17.2.2 (cell references). */
  @ParameterizedTest
  @CsvSource({"1, A", "26, Z", "27, AA", "28, AB", "52, AZ", "702, ZZ", "703, AAA", "16384, XFD"})
  void lettersOfAColumn(int column, String letters) {
    assertEquals(letters, Area.letters(column));
    assertEquals(
        Optional.of(new Area(7, column, 9, column)), Area.of(letters + "7:" + letters + "9"));
  }

  @Test
  void areasMeetWhereTheyShareACell() {
    Area area = new Area(3, 2, 5, 4);
    for (int row = 1; row <= 7; row++) {
      for (int column = 1; column <= 6; column++) {
        boolean within = row >= 3 && row <= 5 && column >= 2 && column <= 4;
        Area cell = new Area(row, column, row, column);
        assertEquals(within, area.meets(cell), cell.reference());
        assertEquals(within, cell.meets(area), cell.reference());
      }
    }
    assertTrue(area.meets(new Area(1, 1, 9, 9)));
    assertFalse(area.meets(new Area(1, 5, 9, 9)));
  }
}
