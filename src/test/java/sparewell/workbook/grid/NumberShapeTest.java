package sparewell.workbook.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.apache.poi.ss.usermodel.DateUtil;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberShapeTest {
  // openpyxl 3.0.9: openpyxl.styles.numbers.is_date_format(pattern)
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '~',
      delimiter = '|',
      value = {
        "yyyy-mm-dd|true",
        "d-mmm|true",
        "[$-409]d-mmm;@|true",
        "[Red]0.00|false",
        "0.00|false",
        "# ?/?|false",
        "0.00E+00|false",
        "h:mm|true",
        "[h]:mm:ss|true",
        "\"day\" 0|false",
        "General|false",
        "@|false",
        "mmm-yy|true",
        "\\d0|false",
        "0 \"oz\"|false",
        "m/d/yyyy;@|true",
        "#,##0.00_);[Red]\\(#,##0.00\\)|false"
      })
  void tellsDatesFromNumbers(String pattern, boolean date) {
    assertEquals(date, NumberShape.ofPattern(pattern) == NumberShape.DATE);
  }

  /**
   * Apache POI 5.5.1, DateUtil.isADateFormat and BuiltinFormats; formats 23 to 36 depend on the
   * language of the program and are unknown there.
   */
  @Test
  void builtInFormatsAgreeWithPoi() {
    for (int id = 0; id < BuiltinFormats.getAll().length; id++) {
      if (id >= 23 && id <= 36) {
        continue;
      }
      boolean date = DateUtil.isADateFormat(id, BuiltinFormats.getBuiltinFormat(id));
      assertEquals(date, NumberShape.ofBuiltIn(id) == NumberShape.DATE, "format " + id);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"# ?/?", "# ??/??", "?/8", "# ?/16", "#\" \"?/?"})
  void tellsFractions(String pattern) {
    assertEquals(NumberShape.FRACTION, NumberShape.ofPattern(pattern));
  }
}
