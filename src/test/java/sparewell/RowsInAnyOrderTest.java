package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.workbook.Books;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.OpenBook;

/** The same rows in another order give the same files: equal choices are settled by name. */
class RowsInAnyOrderTest {
  @TempDir Path folder;

  /** Equal boxes, equal stocks, trips and events of one day: all is alike that can be. */
  private static Books alike() {
    return Books.empty()
        .with("Settings", "Setting|Value\nAs of|2026-06-30\nBudget|20")
        .with(
            "Styles",
            "Style|Family|Weight each|Pack price|Needed at once\nCrank|Hard|0.5|5|\nSpoon|Hard|0.5|5|\n"
                + "Worm|Soft|0.5|5|\nTube|Soft|0.5|5|\nNet|Tools|20||1")
        .with(
            "Stock",
            "Style|Colour|Box|Count|Counted on\nCrank|Red|Tray A|2|2026-01-01\nCrank|Red|Tray B|2|2026-01-01\n"
                + "Crank|Blue|Tray B|2|2026-01-01\nSpoon|Red|Tray A|2|2026-01-01\n"
                + "Spoon|Blue|Tray C|2|2026-01-01\nWorm|Red|Tray C|2|2026-01-01\n"
                + "Worm|Blue|Tray D|2|2026-01-01\nTube|Red|Tray D|2|2026-01-01\n"
                + "Tube|Blue|Shelf|4|2026-01-01\nCrank|Blue|Shelf|4|2026-01-01\n"
                + "Spoon|Red|Shelf|4|2026-01-01\nCrank|Blue|Chest|4|2026-01-01\nNet||Bow|1|2026-01-01")
        .with(
            "Boxes",
            "Box|Compartment|Length|Width|Height|Empty weight\nTray A|Bow|10|8|2|1\nTray B|Bow|10|8|2|1\n"
                + "Tray C|Bow|10|8|2|1\nTray D|Bow|10|8|2|1\nDay box|Stern|10|8|2|1\nChest|Shelf|10|8|2|1")
        .with(
            "Compartments",
            "Compartment|From transom|From centreline|Length|Width|Height|Max load|Ashore\n"
                + "Bow|150|0|30|20|10|40|\nPort|50|-20|11|9|5|40|\nStarboard|50|20|11|9|5|40|\n"
                + "Stern|20|0|11|9|5|40|\nShelf|0|0|||||yes")
        .with(
            "Trips",
            "Trip|Date|Hours|Cover\nT1|2026-03-01|8|wood\nT2|2026-03-01|8|rock\nT3|2026-03-20|8|wood\n"
                + "T4|2026-04-01|8|rock\nT5|2026-04-01|8|")
        .with(
            "Style hours",
            "Trip|Style|Hours\nT1|Crank|4\nT1|Worm|4\nT2|Spoon|4\nT2|Tube|4\nT3|Crank|2\nT3|Spoon|2\n"
                + "T3|Worm|2\nT3|Tube|2\nT4|Crank|4\nT4|Worm|4")
        .with(
            "Losses",
            "Trip|Style|Colour|Lost|Cause|Ran out\nT1|Crank|Red|1|snag|\nT1|Crank|Blue|1|fish|\n"
                + "T2|Crank|Red|1|snag|\nT2|Spoon|Red|1|snag|yes\nT3|Worm|Red|1|fish|\nT3|Tube|Red|1|snag|\n"
                + "T4|Crank||1|snag|\nT4|Worm|Blue|1|snag|\nT5|Crank|Red|2|other|")
        .with(
            "Restocks",
            "Date|Style|Colour|Box|Count|Cost\n2026-03-01|Crank|Red|Tray B|1|5\n"
                + "2026-03-01|Crank|Red|Tray A|1|5\n2026-03-02|Tube|Pink|Tray A|2|9\n"
                + "2026-03-02|Worm|Pink|Tray A|2|9")
        .with(
            "Transfers",
            "Date|Style|Colour|Count|From box|To box\n2026-03-05|Crank|Red|1|Tray A|Tray B\n"
                + "2026-03-05|Crank|Red|1|Tray B|Tray C\n2026-03-06|Tube|Blue|2|Shelf|Tray D")
        .with(
            "Box log",
            "Date|Box|Compartment|Checked\n2026-03-05|Tray D|Port|yes\n2026-02-01|Tray D|Shelf|")
        .with(
            "Counts",
            "Date|Style|Colour|Box|Count\n2026-03-10|Spoon|Red|Tray A|2\n2026-03-12|Spoon|Red|Shelf|3")
        .with(
            "Events",
            "Event|Date|Hours|Cover|Box|Slots\nAlpha Cup|2026-07-10|8|wood|Day box|6\n"
                + "Beta Cup|2026-07-10|8|rock||\nGamma Cup|2026-08-01|8|||")
        .with(
            "Event plan",
            "Event|Style|Hours|Colours\nAlpha Cup|Crank|4|\nAlpha Cup|Spoon|4|\nBeta Cup|Worm|4|\n"
                + "Beta Cup|Tube|4|")
        .with(
            "Loads",
            "Load|Weight|From transom|Kind\nAngler|180|60|person\nPartner|180|60|person\nMotor|400|-10|motor");
  }

  @Test
  void whereAllIsAlike() throws Exception {
    Path book = alike().write(folder.resolve("book.xlsx"));
    Map<String, String> before = analysed(book);
    for (int seed = 1; seed < 5; seed++) {
      assertEquals(before, analysed(shuffled(book, seed)), "order " + seed);
    }
  }

  @Test
  void inTheDemo() throws Exception {
    AnalysedDemo.copy(folder);
    Map<String, String> before = figures(folder.resolve("reports/demo"));
    assertEquals(before, analysed(shuffled(Path.of("workbook-templates/demo.xlsx"), 5)));
  }

  private Map<String, String> analysed(Path book) throws Exception {
    Path reports = folder.resolve("reports");
    Command run =
        Command.run("analyse", book, "--out", folder.resolve("out.xlsx"), "--reports", reports);
    assertEquals(0, run.exitCode(), run.error());
    return figures(reports.resolve(book.getFileName().toString().replace(".xlsx", "")));
  }

  private static Map<String, String> figures(Path written) throws Exception {
    TreeMap<String, String> files = Command.files(written);
    files.keySet().removeIf(name -> !name.endsWith(".csv"));
    // cells are others, of course
    List<String> findings = new ArrayList<>();
    Command.rows(written.resolve("input-checks.csv"))
        .forEach(
            row -> findings.add(row.get("severity") + " " + row.get("message") + row.get("done")));
    Collections.sort(findings);
    files.put("input-checks.csv", String.join("\n", findings));
    return files;
  }

  /** Puts the rows of every input sheet into another order. */
  private Path shuffled(Path book, int seed) throws Exception {
    Path other = folder.resolve("other").resolve(book.getFileName());
    Files.createDirectories(other.getParent());
    Files.copy(book, other, StandardCopyOption.REPLACE_EXISTING);
    Random dice = new Random(seed);
    OpenBook open = OpenBook.of(other);
    for (InputSheet form : InputSheets.ALL) {
      if (open.sheets().contains(form.name())) {
        open.shuffle(form.name(), dice);
      }
    }
    open.save();
    return other;
  }
}
