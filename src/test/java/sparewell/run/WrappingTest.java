package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class WrappingTest {
  @Test
  void laterLinesStandUnderTheTextOfTheFirst() {
    assertEquals(List.of("short"), Wrapping.lines("short", 80));
    assertEquals(
        List.of("12. one two", "    three", "    four"),
        Wrapping.lines("12. one two three four", 11));
    assertEquals(List.of("     a", "     b"), Wrapping.lines("     a b", 6));
    assertEquals(List.of("averylongword", "b"), Wrapping.lines("averylongword b", 5));
  }
}
