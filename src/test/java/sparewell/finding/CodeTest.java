package sparewell.finding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertIterableEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sparewell.declared.DeclaredTable;

class CodeTest {
  @Test
  void everyLineOfTheFileIsAKindInTheSameOrder() {
    List<String> lines =
        DeclaredTable.read(Code.class, "codes.txt").values().stream()
            .flatMap(table -> table.rows().stream())
            .map(row -> row.get(0))
            .toList();
    assertTrue(lines.size() > 100, "lines: " + lines.size());
    assertIterableEquals(Stream.of(Code.values()).map(Code::name).toList(), lines);
  }

  @Test
  void noIdServesTwice() {
    assertEquals(Code.values().length, Stream.of(Code.values()).map(Code::id).distinct().count());
  }
}
