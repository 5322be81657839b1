package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.Command;
import sparewell.workbook.Beginner;
import sparewell.workbook.Books;

/**
 * Every line is ticked, those beyond the budget too, and posted: nothing of it is asked again, the
 * stock is the one reckoned by hand, and what the angler has is there to the byte.
 */
class TickEverythingTest {
  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"demo-metric", "messy-demo"})
  void nothingIsLeft(String name) throws Exception {
    Path book =
        Files.copy(Path.of("workbook-templates/" + name + ".xlsx"), folder.resolve(name + ".xlsx"));
    Map<String, Integer> wanted = ticked(book, name);
    Set<String> reasons = new TreeSet<>();
    Command.rows(folder.resolve(name + "/spares.csv"))
        .forEach(row -> reasons.add(row.get("reason")));
    assertEquals(Set.of("event plan", "floor", "loss rate", "needed at once"), reasons);
    byte[] before = Files.readAllBytes(book);
    String posted = run("post", book);
    assertEquals(List.of(), StockByHand.differences(wanted, StockByHand.of(folder.resolve(name))));
    assertTrue(PostTest.keptSheets(before, Files.readAllBytes(book)) > 15);
    nothingAsked(posted);
    assertEquals(
        !name.startsWith("messy"), posted.contains("Nothing to do: everything you need"), posted);
  }

  /** A beginner types no box, wherever his tackle is. */
  @ParameterizedTest
  @ValueSource(strings = {"as it is", "all at home", "no box aboard", "all at home, for an event"})
  void aBeginnersTicksArePostedWithoutMoreToType(String how) throws Exception {
    Books book = Beginner.book();
    if (!how.equals("as it is")) {
      book.edit("Stock", text -> text.replaceAll("\\|(Worm|Jig|Wire|Crank) box\\|", "|Bin|"));
    }
    if (how.equals("no box aboard")) {
      book.edit("Boxes", text -> text.replaceAll("\\n\\w+ box\\|[^\n]*", ""));
    }
    if (how.endsWith("event")) {
      book.with("Events", "Event|Date|Hours|Box|Slots\nFirst cup|2026-05-23|8|Jig box|3");
    }
    Path file = book.write(folder.resolve("first.xlsx"));
    Map<String, Integer> wanted = ticked(file, "first");
    run("post", file);
    assertEquals(
        List.of(), StockByHand.differences(wanted, StockByHand.of(folder.resolve("first"))));
    assertTrue(wanted.keySet().stream().filter(key -> !key.endsWith("Bin")).count() > 9);
    nothingAsked(run("analyse", file));
  }

  private Map<String, Integer> ticked(Path book, String name) throws Exception {
    run("analyse", book);
    return StockByHand.tickAll(book, StockByHand.of(folder.resolve(name)), true);
  }

  private static void nothingAsked(String text) {
    for (String step : List.of("Bring ", "Buy ", "Pack ", "Move ", "Recount ", "Check ", "Post ")) {
      assertFalse(text.contains(". " + step), text);
    }
  }

  private String run(String command, Path book) {
    Command run = Command.run(command, book, "--reports", folder);
    assertEquals(0, run.exitCode(), run.error());
    return run.out();
  }
}
