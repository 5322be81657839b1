package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Analysed;
import sparewell.Command;
import sparewell.Ticking;
import sparewell.workbook.Beginner;

/** The same ticks give the same stock, whether posted at once or in several goes, in any order. */
class GroupedPostTest {
  @TempDir private Path folder;

  private Path analysed() {
    return Analysed.write(Beginner.book(), folder.resolve("first.xlsx"));
  }

  /**
   * Posts the ticks of some lines of a list, group by group; gives the pieces of each item by box.
   */
  private Map<String, String> posted(List<List<String>> groups) throws Exception {
    Path book = analysed();
    for (List<String> group : groups) {
      List<String> left = new ArrayList<>(group);
      Ticking.edit(
          book,
          open -> {
            for (String sheet : List.of("Spares", "Buy list")) {
              if (open.sheets().contains(sheet)) {
                Ticking.type(
                    open,
                    sheet,
                    "Done",
                    l -> {
                      left.remove(item(sheet, l));
                      return group.contains(item(sheet, l)) ? "yes" : null;
                    });
              }
            }
          });
      assertEquals(List.of(), left, "asked for no more before it was done");
      Command post = Command.run("post", book, "--reports", folder);
      assertEquals(0, post.exitCode(), post.error());
    }
    Map<String, String> stock = new TreeMap<>();
    for (CSVRecord row : Command.rows(folder.resolve("first/where-it-is.csv"))) {
      if (!row.get("count").equals("0")) {
        stock.merge(
            String.join("|", row.get("style"), row.get("size"), row.get("colour"), row.get("box")),
            row.get("count"),
            (a, b) -> a + "+" + b);
      }
    }
    return stock;
  }

  private static String item(String sheet, Ticking.Line line) {
    return sheet + "|" + line.at("Style") + "|" + line.at("Size") + "|" + line.at("Colour");
  }

  @Test
  void ticksPostedInAnyGroupingGiveTheSameStock() throws Exception {
    List<String> lines =
        Ticking.lines(analysed(), "Buy list", "Done").stream()
            .map(line -> item("Buy list", line))
            .distinct()
            .toList();
    assertTrue(lines.size() > 1, lines.toString());
    Map<String, String> atOnce = posted(List.of(lines));
    Random random = new Random(20260520);
    for (int round = 0; round < 3; round++) {
      List<String> order = new ArrayList<>(lines);
      Collections.shuffle(order, random);
      List<List<String>> groups = new ArrayList<>();
      for (String one : order) {
        if (groups.isEmpty() || random.nextBoolean()) {
          groups.add(new ArrayList<>());
        }
        groups.get(groups.size() - 1).add(one);
      }
      assertEquals(atOnce, posted(groups), groups.toString());
    }
  }
}
