package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Analysed;
import sparewell.Command;
import sparewell.Ticking;
import sparewell.workbook.Beginner;
import sparewell.workbook.Books;
import sparewell.workbook.OpenBook;

/** The trip card waits for an event behind until its trip is logged, whatever is run meanwhile. */
class CardWaitsTest {
  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void analysed() {
    Books books =
        Beginner.book()
            .edit("Settings", settings -> settings.replace("2026-05-20", "2026-03-15"))
            .edit("Losses", losses -> losses.replace("Stck", "Stick"))
            .with(
                "Trips",
                "Trip|Date|Days|Hours|Cover\n"
                    + "First outing|2026-02-02|1|6|grass\nSecond outing|2026-02-16|1|5|wood")
            .with(
                "Events",
                "Event|Date|Days|Hours|Cover|Box|Slots\n"
                    + "Stone Open|2026-03-27|3|4|rock|Jig box|12\n"
                    + "Monday Pairs|2026-03-30|2|4|wood\n"
                    + "Grass Open|2026-04-11|2|4|grass|Jig box|12\n"
                    + "Club evening|2026-04-17|1|3|wood\n"
                    + "Marrowby Two-day|2026-05-09|2|4|rock");
    book = Analysed.write(books, folder.resolve("demo.xlsx"));
  }

  private Command analyse(String asOf) throws Exception {
    Ticking.edit(book, open -> Ticking.field(open, "Settings", "As of", LocalDate.parse(asOf)));
    return run("analyse");
  }

  private Command run(String command) {
    Command run = Command.run(command, book, "--reports", folder.resolve("reports"));
    assertEquals(0, run.exitCode(), run.error());
    return run;
  }

  private List<OpenBook.Row> rows(String name) {
    return OpenBook.of(book).rows(name);
  }

  private String field(String label) {
    return rows("Trip card").stream()
        .filter(row -> row.text(1).equals(label))
        .map(row -> row.text(2))
        .findFirst()
        .orElseThrow();
  }

  /** Style, size and colour of each row of the card. */
  private List<String> items() {
    return Ticking.lines(book, "Trip card", "Lost").stream()
        .map(line -> line.at("Style") + line.at("Size") + line.at("Colour"))
        .toList();
  }

  /** True where the items stand with a square for each piece. */
  private boolean counted() {
    return rows("Trip card").stream().anyMatch(row -> row.text(4).equals("One for each"))
        && rows("Trip card").stream().anyMatch(row -> row.text(5).equals("Lost"));
  }

  @Test
  void whatWasTypedStaysUntilItIsPosted() throws Exception {
    assertEquals("Stone Open", field("Trip"));
    List<String> printed = items();
    assertTrue(counted(), "squares to cross out afloat");
    Ticking.edit(
        book,
        open -> {
          Ticking.field(open, "Trip card", "Hours fished", 26);
          Ticking.field(open, "Trip card", "Cover, mostly", "wood");
          Ticking.type(open, "Trip card", "Hours", line -> 2);
          Ticking.type(open, "Trip card", "Lost", line -> 1);
        });
    Command after = analyse("2026-05-01"); // two events are behind, and more than the days of grace
    assertTrue(after.out().contains("Trip card still waits for Stone Open"), after.out());
    assertEquals("Stone Open", field("Trip"));
    assertEquals("26", field("Hours fished"));
    assertEquals("wood", field("Cover, mostly"));
    assertEquals(printed, items());
    assertFalse(counted(), "today's counts are not those of the event");
    assertEquals(printed.size(), Ticking.typed(book, "Trip card", "Lost").size());
    run("post");
    List<OpenBook.Row> trips = rows("Trips");
    assertTrue(
        trips.stream()
            .anyMatch(row -> row.text(1).equals("Stone Open") && row.text(4).equals("26")),
        trips.toString());
    assertEquals(
        printed.size(),
        rows("Losses").stream().filter(row -> row.text(1).equals("Stone Open")).count());
    assertEquals("Club evening", field("Trip"), "the next event behind that is not logged");
    assertEquals("", field("Hours fished"));
    analyse("2026-05-03");
    assertEquals("Marrowby Two-day", field("Trip"), "nothing typed and too long behind");
  }

  @Test
  void thePrintedCardWaitsAndTheCoverAloneStays() throws Exception {
    List<String> printed = items();
    Command after = analyse("2026-03-30"); // the next event is today
    assertTrue(after.out().contains("Trip card still waits for it"), after.out());
    assertEquals("Stone Open", field("Trip"));
    assertEquals(printed, items());
    Ticking.edit(book, open -> Ticking.field(open, "Trip card", "Cover, mostly", "wood"));
    analyse("2026-03-30");
    assertEquals("wood", field("Cover, mostly"));
    analyse("2026-04-12"); // 14 days after its last day
    assertEquals("Stone Open", field("Trip"));
    analyse("2026-04-13");
    assertEquals("Monday Pairs", field("Trip"));
  }

  @Test
  void aTripTypedIntoTripsSetsTheCardFree() throws Exception {
    Ticking.edit(book, open -> open.add("Trips", "At the reservoir", "2026-03-28", null, 9));
    Command after = analyse("2026-03-30");
    assertFalse(after.out().contains("still waits"), after.out());
    assertEquals("Monday Pairs", field("Trip"));
  }

  @Test
  void aNameOfHisOwnStays() throws Exception {
    Ticking.edit(book, open -> Ticking.field(open, "Trip card", "Trip", "Lake day"));
    analyse("2026-03-15");
    assertEquals("Lake day", field("Trip"));
    assertEquals("Stone Open", field("Event"));
    Ticking.edit(book, open -> Ticking.type(open, "After trip", "Done", line -> "yes"));
    run("post");
    assertEquals("Lake day", field("Trip"), "other ticks were posted");
    Ticking.edit(
        book,
        open -> {
          Ticking.field(open, "Trip card", "Hours fished", 7);
          Ticking.field(open, "Trip card", "Date", LocalDate.parse("2026-03-14"));
        });
    run("post");
    assertTrue(rows("Trips").stream().anyMatch(row -> row.text(1).equals("Lake day")));
    assertEquals("Stone Open", field("Trip"));
  }

  @Test
  void anEventTakenOffTheListTakesItsNameFromTheCard() throws Exception {
    Ticking.edit(
        book,
        open -> {
          for (OpenBook.Row row : open.rows("Events")) {
            if (row.text(1).equals("Stone Open")) {
              row.cell(1).set("Rock Open");
            }
          }
        });
    analyse("2026-03-15");
    assertEquals("Rock Open", field("Trip"));
  }

  @Test
  void theCoverAloneStaysWhenOtherTicksArePosted() throws Exception {
    List<String> printed = items();
    analyse("2026-03-30");
    Ticking.edit(
        book,
        open -> {
          Ticking.field(open, "Trip card", "Cover, mostly", "wood");
          Ticking.type(open, "After trip", "Done", line -> "yes");
        });
    run("post");
    assertEquals("wood", field("Cover, mostly"));
    assertEquals(printed, items(), "in the order of the page");
  }

  @Test
  void aSecondWorkbookIsToldInPlainWords() {
    Command post = Command.run("post", "a.xlsx", "b.xlsx");
    assertEquals(2, post.exitCode());
    assertTrue(
        post.error()
            .contains("'sparewell post' takes one BOOK at a time; 'b.xlsx' is one too many"),
        post.error());
    assertTrue(Command.run("pots").error().contains("There is no command 'pots'."));
  }
}
