package sparewell.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import sparewell.finding.Finding;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

class ChecksTest {
  private static final Path SOURCES = Path.of("src/main/java/sparewell/check");

  private static Books sound() {
    return Books.season().plus("Stock", "Worm||Pink|Stern|3|2026-01-01");
  }

  private static List<String> findings(Books books) {
    return Checks.of(Reading.of(books).season()).stream().map(Reading::line).toList();
  }

  @Test
  void aSoundSeasonBreaksNoRule() {
    assertEquals(List.of(), findings(sound()));
  }

  @Test
  void whatHoldsNothingIsNoted() {
    assertEquals(
        List.of(
            "note Styles A4 STYLE_WITHOUT_STOCK",
            "note Boxes A3 BOX_WITHOUT_STOCK",
            "note Compartments A5 COMPARTMENT_EMPTY"),
        findings(
            sound()
                .plus("Styles", "Spoon|Spoons")
                .plus("Boxes", "Tray B|Stern")
                .plus("Compartments", "Well|60")));
  }

  @Test
  void anEmptyPlaceAshoreIsNoRoomToStowIn() {
    assertEquals(
        List.of(),
        findings(
            sound()
                .with(
                    "Compartments",
                    "Compartment|From transom|Ashore\nBow|160|\nStern|20|\nGarage|0|yes")));
  }

  @Test
  void aRestockIsContentToo() {
    assertEquals(
        List.of(),
        findings(
            sound()
                .plus("Boxes", "Tray B|Stern")
                .with("Restocks", "Date|Style|Box|Count\n2026-02-01|Worm|Tray B|1")));
  }

  @Test
  void boxesDueForACheckAreNoted() {
    Books books =
        sound()
            .with(
                "Boxes",
                "Box|Compartment|Last checked|Check every (days)\nTray A|Bow|2026-06-01|30")
            .with("Settings", "Setting|Value\nAs of|2026-06-30");
    assertEquals(List.of(), findings(books)); // due on 2026-07-01
    assertEquals(
        List.of("note Boxes A2 BOX_CHECK_DUE"),
        findings(books.with("Settings", "Setting|Value\nAs of|2026-07-01")));
    assertEquals(
        List.of("note Boxes A2 BOX_NEVER_CHECKED"),
        findings(books.with("Boxes", "Box|Compartment|Check every\nTray A|Bow|30")));
  }

  @Test
  void hoursThatCannotBeAreRemarked() {
    assertEquals(
        List.of(
            "warning Trips A2 STYLE_HOURS_BEYOND_TRIP", "warning Trips A3 TRIP_HOURS_BEYOND_DAYS"),
        findings(
            sound()
                .plus("Trips", "T2|2026-03-05|25|1\nT3|2026-03-09|25|2")
                .plus("Style hours", "T1|Worm|17")));
  }

  @Test
  void lossesWithoutThrowingAreRemarked() {
    assertEquals(
        List.of("warning Losses A2 LOSS_WITHOUT_HOURS"),
        findings(sound().with("Style hours", "Trip|Style|Hours\nT1|Crank|0\nT1|Worm|5")));
  }

  @Test
  void stylesAboardWithoutWeightAreRemarked() {
    Books books =
        sound()
            .with("Styles", "Style|Family|Weight each\nCrank|Hard\nWorm|Soft|1")
            .with(
                "Stock",
                "Style|Box|Count|Weight each\nCrank|Tray A|3\nCrank|Shelf|9\nWorm|Stern|1");
    assertEquals(List.of("warning Styles A2 STYLE_WITHOUT_WEIGHT"), findings(books));
    assertEquals(
        List.of("warning Styles A2 STYLE_WITHOUT_WEIGHT"),
        findings(
            books
                .with(
                    "Stock",
                    "Style|Box|Count|Counted on\nCrank|Shelf|9|2026-01-01\nWorm|Stern|1|2026-01-01")
                .with("Restocks", "Date|Style|Box|Count\n2026-02-01|Crank|Tray A|2")),
        "bought into a box aboard");
    assertEquals(
        List.of(),
        findings(
            books.with(
                "Stock",
                "Style|Box|Count|Weight each\nCrank|Tray A|3|1\nCrank|Shelf|9\nWorm|Stern|1")));
  }

  @Test
  void weightsOfAnotherUnitAreRemarked() {
    assertEquals(
        List.of(
            "warning Styles A4 ITEM_WEIGHT_DOUBTFUL",
            "warning Boxes A2 BOX_WEIGHT_DOUBTFUL",
            "warning Loads A2 PERSON_WEIGHT_DOUBTFUL"),
        findings(
            sound()
                .plus("Styles", "Rod|Rods|160||||1")
                .plus("Stock", "Rod|||Bow|4")
                .with("Boxes", "Box|Compartment|Empty weight\nTray A|Bow|700")
                .with(
                    "Loads", "Load|Weight|From transom|Kind\nMe|8|60|person\nMate|180|60|person")));
  }

  @Test
  void aDoubtfulWeightIsSaidInTheAnglersUnit() {
    Finding found =
        Checks.of(
                Reading.of(sound().with("Boxes", "Box|Compartment|Empty weight\nTray A|Bow|700"))
                    .season())
            .get(0);
    assertEquals("box 'Tray A' weighs 700.0 lb empty; is the unit right?", found.message());
  }

  @Test
  void positionsOfAnotherUnitAreRemarked() {
    assertEquals(
        List.of(
            "warning Compartments A5 POSITION_DOUBTFUL",
            "warning Loads A3 POSITION_DOUBTFUL",
            "warning Loads A4 POSITION_DOUBTFUL"),
        findings(
            sound()
                .plus("Compartments", "Locker|400|no\nGarage|900|yes")
                .plus("Stock", "Worm||Pink|Locker|3\nWorm||Pink|Garage|3")
                .with(
                    "Loads",
                    "Load|Weight|From transom|From centreline\nMotor|400|-20|0\nA|9|-90|0\nB|9|9|90")));
  }

  @Test
  void aDoubtfulPositionIsSaidInTheAnglersUnit() {
    Finding found =
        Checks.of(
                Reading.of(
                        sound()
                            .plus("Compartments", "Locker|17800|no")
                            .plus("Stock", "Worm||Pink|Locker|3|2026-01-01"))
                    .season())
            .get(0);
    assertEquals(
        "'Locker' stands 17800.0 in forward of the transom; is the unit right?", found.message());
    assertTrue(found.done().contains("more than 315.0 in is implausible"), found.done());
  }

  @Test
  void eventsThatAreOverAreNoted() {
    assertEquals(
        List.of("note Events A2 EVENT_PAST"),
        findings(sound().with("Events", "Event|Date|Hours\nOld|2026-06-29|8\nToday|2026-06-30|8")));
  }

  @Test
  void differingFloorsAreNoted() {
    Books books =
        sound()
            .with(
                "Stock",
                "Style|Box|Count|Carry at least\nCrank|Tray A|3|2\nCrank|Shelf|3|4\n"
                    + "Worm|Stern|1|1\nWorm|Shelf|1|1");
    assertEquals(List.of("note Stock A2 FLOORS_DIFFER"), findings(books));
  }

  /** Three of every item are asked for unless said otherwise, three landing nets too. */
  @Test
  void gearThatIsAskedForLikeLuresIsNoted() {
    assertEquals(List.of("note Styles A4 GEAR_WITHOUT_FLOOR"), findings(one("Net", "Nets|20")));
    assertEquals(List.of(), findings(one("Net", "Nets|20||||1")));
    assertEquals(List.of(), findings(one("Spoon", "Spoons|20")));
    assertEquals(
        List.of(),
        findings(one("Net", "Nets|20").with("Settings", "Setting|Value\nCarry at least|0")));
  }

  private static Books one(String style, String rest) {
    return sound().plus("Styles", style + "|" + rest).plus("Stock", style + "|||Bow|1|2026-01-01");
  }

  @Test
  void oldCountsAreNoted() {
    assertEquals(
        List.of("note Stock A6 COUNT_OLD"),
        findings(
            sound()
                .plus("Stock", "Worm||Pink|Tray A|3|2025-06-29\nWorm||Pink|Shelf|3|2025-06-30")));
  }

  @Test
  void aPlateNobodyIsComparedWithIsNoted() {
    Books books = sound().with("Boat", "Item|Value\nPlate weight|900\nPlate persons weight|1000");
    assertEquals(
        List.of("warning Boat  PLATE_LINES_SWAPPED", "note Boat  NO_PERSON_LOADED"),
        findings(books));
    assertEquals(
        List.of(),
        findings(
            books
                .with("Boat", "Item|Value\nPlate weight|1200\nPlate persons weight|1000")
                .with("Loads", "Load|Weight|From transom|Kind\nMe|180|60|person")));
  }

  /** A rule that nobody lists would never run. */
  @Test
  void everyRuleIsListed() throws IOException {
    String listed = Files.readString(SOURCES.resolve("Checks.java"));
    Pattern rule = Pattern.compile("static void (\\w+)\\(Season season, Findings findings\\)");
    int rules = 0;
    try (DirectoryStream<Path> files = Files.newDirectoryStream(SOURCES, "*.java")) {
      for (Path file : files) {
        Matcher found = rule.matcher(Files.readString(file));
        while (found.find()) {
          String name = file.getFileName().toString().replace(".java", "::") + found.group(1);
          assertTrue(listed.contains(name), "not in Checks.ALL: " + name);
          rules++;
        }
      }
    }
    assertTrue(rules > 10, "only " + rules);
  }
}
