package sparewell.declared;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class DeclaredTableTest {
  private final Map<String, DeclaredTable> tables =
      DeclaredTable.read(DeclaredTableTest.class, "sample.txt");

  @Test
  void tablesBeginWithTheirNameAndTitle() {
    assertEquals(List.of("First", "Second*"), List.copyOf(tables.keySet()));
    assertEquals("its title | more", tables.get("First").title());
    assertEquals("", tables.get("Second*").title());
  }

  @Test
  void fieldsArePartedByBarsAndMayBeBlank() {
    assertEquals(
        List.of(List.of("a", "one", "two"), List.of("", "b", "")), tables.get("First").rows());
    assertEquals(List.of(List.of("c")), tables.get("Second*").rows());
  }

  @Test
  void aRowIsFoundByItsFirstFieldThatIsNotBlank() {
    assertEquals(Set.of("a", "b"), tables.get("First").byName().keySet());
  }
}
