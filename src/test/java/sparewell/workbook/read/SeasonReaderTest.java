package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.workbook.Books;

class SeasonReaderTest {
  @Test
  void aSoundSeasonIsReadWithoutAFinding() {
    Reading reading = Reading.of(Books.season());
    assertEquals(List.of(), reading.lines());
    Season season = reading.season();
    assertEquals(2, season.styles().size());
    assertEquals(new ItemId("Crank", "3/8", "Red"), season.stock().get(0).item());
    assertEquals(25, season.stock().get(1).countedPieces());
    assertEquals("Shelf", season.stock().get(2).place().name());
    assertEquals(8, season.trips().get(0).fishedHours().orElseThrow());
    assertEquals(1, season.losses().size());
    assertEquals(2, season.styleHours().size());
  }
}
