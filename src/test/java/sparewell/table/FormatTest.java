package sparewell.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.units.UnitSystem;

class FormatTest {
  /** Shown texts of cells, by Apache POI's interpretation of number patterns. */
  @ParameterizedTest
  @CsvSource(
      useHeadersInDisplayName = true,
      textBlock =
          """
          format,      value,   plain,  dashed
          COUNT,       0,       0,      –
          COUNT,       12,      12,     12
          NUMBER,      0.004,   0.00,   –
          NUMBER,      0.006,   0.01,   0.01
          NUMBER,      3.456,   3.46,   3.46
          PROBABILITY, 0,       0.0%,   –
          PROBABILITY, 0.00001, <0.1%,  <0.1%
          PROBABILITY, 0.269,   26.9%,  26.9%
          MONEY,       0,       0.00,   –
          MONEY,       4.99,    4.99,   4.99""")
  void dashesStandForNothingAlone(Format format, double value, String plain, String dashed) {
    Column<Double> column = format.onSheet("Figure", "A figure.", number -> number);
    assertEquals(plain, shown(value, column));
    assertEquals(dashed, shown(value, column.quiet()));
  }

  private static String shown(double value, Column<Double> column) {
    return new DataFormatter(Locale.ROOT)
        .formatRawCellContents(value, 164, column.pattern(UnitSystem.US));
  }
}
