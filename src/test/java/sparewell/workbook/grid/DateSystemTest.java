package sparewell.workbook.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DateSystemTest {
  // openpyxl 3.0.9: openpyxl.utils.datetime.from_excel(number, WINDOWS_EPOCH), time cut off
  @ParameterizedTest
  @CsvSource({
    "1, 1900-01-01",
    "59, 1900-02-28",
    "61, 1900-03-01",
    "45000, 2023-03-15",
    "46145.25, 2026-05-03",
    "73050, 2099-12-31"
  })
  void countsFrom1900(double number, LocalDate date) {
    assertEquals(date, DateSystem.FROM_1900.date(number).orElseThrow());
  }

  // openpyxl 3.0.9: openpyxl.utils.datetime.from_excel(number, MAC_EPOCH), time cut off
  @ParameterizedTest
  @CsvSource({"1, 1904-01-02", "43538, 2023-03-15", "44683.5, 2026-05-03"})
  void countsFrom1904(double number, LocalDate date) {
    assertEquals(date, DateSystem.FROM_1904.date(number).orElseThrow());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, 0, 0.5, 60, 3e6})
  void someNumbersNameNoDay(double number) {
    assertTrue(DateSystem.FROM_1900.date(number).isEmpty());
  }
}
