package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.Command;

/**
 * Every line is ticked, those beyond the budget too, and posted: nothing of it is asked again, the
 * stock is the one reckoned by hand, and what the angler has is there to the byte.
 */
class TickEverythingTest {
  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"demo", "demo-metric", "messy-demo"})
  void nothingIsLeft(String name) throws Exception {
    Path book =
        Files.copy(Path.of("workbook-templates/" + name + ".xlsx"), folder.resolve(name + ".xlsx"));
    run("analyse", book);
    Map<String, Integer> wanted =
        StockByHand.tickAll(book, StockByHand.of(folder.resolve(name)), true);
    byte[] before = Files.readAllBytes(book);
    String posted = run("post", book);
    assertEquals(List.of(), StockByHand.differences(wanted, StockByHand.of(folder.resolve(name))));
    assertTrue(PostTest.keptSheets(before, Files.readAllBytes(book)) > 15);
    String again = run("analyse", book);
    for (String text : List.of(posted, again)) {
      for (String step :
          List.of("Bring ", "Buy ", "Pack ", "Move ", "Recount ", "Check ", "Post ")) {
        assertFalse(text.contains(". " + step), text);
      }
      assertEquals(
          !name.startsWith("messy"), text.contains("Nothing to do: everything you need"), text);
    }
  }

  private String run(String command, Path book) {
    Command run = Command.run(command, book, "--reports", folder);
    assertEquals(0, run.exitCode(), run.error());
    return run.out();
  }
}
