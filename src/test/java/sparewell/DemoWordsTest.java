package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.workbook.InputSheets;
import sparewell.workbook.OpenBook;

/** Sheets of the analysed demo agree with each other and with the files. */
class DemoWordsTest {
  @TempDir private static Path folder;

  /** Texts of each sheet, row by row. */
  private static final Map<String, List<String>> SAID = new HashMap<>();

  @BeforeAll
  static void read() throws Exception {
    Path demo = AnalysedDemo.copy(folder);
    OpenBook book = OpenBook.of(demo);
    book.sheets().forEach(sheet -> SAID.put(sheet, Ticking.texts(book, sheet)));
  }

  private static List<CSVRecord> rows(String file) throws Exception {
    return Command.rows(folder.resolve("reports/demo").resolve(file));
  }

  private static String found(String sheet, String pattern) {
    for (String text : SAID.get(sheet)) {
      Matcher matcher = Pattern.compile(pattern).matcher(text);
      if (matcher.find()) {
        return matcher.group(1);
      }
    }
    throw new AssertionError(pattern + " in " + SAID.get(sheet));
  }

  @Test
  void readmeGivesTheChancesOfTheFrontPage() throws Exception {
    String readme = Files.readString(Path.of("README.md")).replaceAll("\\s+", " ");
    String chances = found("Spares", "runs out: (.* % now, .* % after .*, .* % once)");
    Matcher each = Pattern.compile("(\\d+ %)").matcher(chances);
    List<String> three = each.results().map(MatchResult::group).toList();
    String said =
        "(%s now, %s once you brought what lies ashore, %s once you also bought the whole list)";
    assertTrue(readme.contains(said.formatted(three.toArray())), chances);
  }

  /** The demo's plate is typed as 1750 lb; masses are kept in whole milligrams. */
  @Test
  void aWeightComesBackAsItWasTyped() throws Exception {
    for (CSVRecord row : rows("load-summary.csv")) {
      if (row.get("quantity").equals("plate_weight")) {
        assertEquals("1750", row.get("value"));
      }
    }
  }

  @Test
  void theTrackRecordBeginsWithWhatFollowingTheAdviceWithItsFloorWouldHaveDone() throws Exception {
    Map<String, CSVRecord> rules = new HashMap<>();
    rows("track-record.csv").forEach(row -> rules.put(row.get("policy"), row));
    CSVRecord advice = rules.get("recommendation with floor");
    assertEquals(
        "Following the advice with its floor: %s run-outs in %s; three of each: %s."
            .formatted(
                advice.get("run_outs"),
                advice.get("predictions"),
                rules.get("flat three").get("run_outs")),
        SAID.get("Track record").get(1));
  }

  @Test
  void sparesAndTheFrontPageBuyTheSame() {
    assertEquals(
        found("After trip", "Buy (\\d+ packs.*?) for "),
        found("Spares", "then buy (.*?) \\(Buy list"));
  }

  @Test
  void theStepsOfReadMeFirstFollowTheTabs() {
    List<String> named =
        SAID.get("Read me first").stream()
            .filter(text -> text.matches("[1-4] .*"))
            .flatMap(text -> List.of(text.substring(1).strip().split(", ")).stream())
            .toList();
    List<String> tabs = InputSheets.ALL.stream().map(sheet -> sheet.name()).toList();
    assertEquals(tabs.stream().filter(named::contains).toList(), named);
    assertTrue(named.size() > 10, named.toString());
    assertTrue(SAID.get("Read me first").toString().contains("answer stands on After trip"));
  }

  @Test
  void theGapIsToldInPlainWords() {
    String stow = SAID.get("Stow plan").toString();
    assertFalse(stow.contains("Gap"), stow);
    assertTrue(stow.matches("(?s).*(proven that none is better|could lie at most).*"), stow);
  }

  /** Labels are for the stow that the moves lead to. */
  @Test
  void aLabelNamesTheCompartmentAfterTheMoves() throws Exception {
    int moved = 0;
    for (CSVRecord box : rows("stow-plan.csv")) {
      if (box.get("move").equals("yes")) {
        String top = "\n" + box.get("to_compartment") + " · TOP";
        assertTrue(
            SAID.get("Labels").stream()
                .anyMatch(text -> text.startsWith(box.get("box")) && text.contains(top)),
            box.toString());
        moved++;
      }
    }
    assertTrue(moved > 0);
  }

  @Test
  void readmeNamesTheColumnsOfRatesAsTheSheetDoes() throws Exception {
    String heading =
        Files.readAllLines(Path.of("README.md")).stream()
            .filter(line -> line.startsWith("| Style | "))
            .findFirst()
            .orElseThrow();
    List<String> named = List.of(heading.substring(2, heading.length() - 2).split(" \\| "));
    assertEquals(8, named.size());
    assertEquals(
        named, SAID.get("Loss rates").stream().filter(named::contains).distinct().toList());
  }
}
