package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.workbook.Books;

class LongSheetsTest {
  @Test
  void aSheetOfThousandsOfRowsIsReadToItsEnd() {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < 3000; i++) {
      rows.append("\nT1|Crank|'3/8|Red|1|snag|no");
    }
    Reading reading =
        Reading.of(
            Books.season().with("Losses", "Trip|Style|Size|Colour|Lost|Cause|Ran out" + rows));
    assertEquals(List.of(), reading.lines());
    assertEquals(3000, reading.season().losses().size());
  }
}
