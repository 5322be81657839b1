package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Analysed;
import sparewell.AnalysedDemo;
import sparewell.Command;
import sparewell.Ticking;
import sparewell.ooxml.Zips;
import sparewell.workbook.Beginner;
import sparewell.workbook.Books;
import sparewell.workbook.OpenBook;

/** The demo's angler does what the front page says, ticks it off, and posts. */
class PostTest {
  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void analysed() throws Exception {
    book = AnalysedDemo.copy(folder);
  }

  /** The workbook of a beginner instead, where the demo shows nothing more. */
  private void small() {
    Books books =
        Beginner.book()
            .edit("Stock", text -> text.replaceAll("\\|(Jig|Wire) box\\|", "|Bin|"))
            .with("Transfers", "Date|Style|Size|Colour|Count|From box|To box")
            .with("Box log", "Date|Box|Compartment|Checked")
            .with("Counts", "Date|Style|Size|Colour|Box|Count");
    book = Analysed.write(books, folder.resolve("small.xlsx"));
  }

  private Command analyse() {
    return done(Command.run("analyse", book, "--reports", folder.resolve("reports")));
  }

  private Command post(Object... more) {
    List<Object> all =
        new ArrayList<>(List.of("post", book, "--reports", folder.resolve("reports")));
    all.addAll(List.of(more));
    return Command.run(all.toArray());
  }

  private static Command done(Command run) {
    assertEquals(0, run.exitCode(), run.error());
    return run;
  }

  /** Changes more than cells. */
  private void byLibrary(Consumer<XSSFWorkbook> change) throws Exception {
    try (XSSFWorkbook open = new XSSFWorkbook(Files.newInputStream(book))) {
      change.accept(open);
      try (OutputStream out = Files.newOutputStream(book)) {
        open.write(out);
      }
    }
  }

  private Map<String, Integer> stock() throws Exception {
    return StockByHand.of(folder.resolve("reports/demo"));
  }

  /** Sheets of the angler's whose every filled row is there to the byte. */
  static int keptSheets(byte[] before, byte[] after) {
    Map<String, byte[]> now = Zips.read(after);
    int kept = 0;
    for (Map.Entry<String, byte[]> part : Zips.read(before).entrySet()) {
      if (part.getKey().matches("xl/worksheets/sheet[^/]+") && now.containsKey(part.getKey())) {
        String there = new String(now.get(part.getKey()), StandardCharsets.UTF_8);
        Matcher row =
            Pattern.compile("<row .*?</row>")
                .matcher(new String(part.getValue(), StandardCharsets.UTF_8));
        while (row.find()) {
          boolean filled = row.group().contains("<v>");
          assertTrue(!filled || there.contains(row.group()), part.getKey() + row.group());
        }
        kept++;
      }
    }
    return kept;
  }

  @Test
  void whatIsTickedAndPostedIsAskedForNoMore() throws Exception {
    Set<String> beyond =
        Command.rows(folder.resolve("reports/demo/buy-list.csv")).stream()
            .filter(row -> row.get("within_budget").equals("no"))
            .map(StockByHand::item)
            .collect(Collectors.toSet());
    Map<String, Integer> wanted = StockByHand.tickAll(book, stock(), false);
    byte[] before = Files.readAllBytes(book);
    Command post = done(post());
    assertEquals(List.of(), StockByHand.differences(wanted, stock()));
    assertTrue(post.out().contains("Posted: "), post.out());
    for (String step : List.of("Bring ", "Pack ", "Move ", "Check ")) {
      assertFalse(post.out().contains(". " + step), post.out());
    }
    // What the money did not pay for is all that is left to buy.
    assertEquals(
        beyond,
        Command.rows(folder.resolve("reports/demo/buy-list.csv")).stream()
            .map(StockByHand::item)
            .collect(Collectors.toSet()));
    assertTrue(keptSheets(before, Files.readAllBytes(book)) > 15);
    for (String sheet : List.of("Spares", "Buy list", "Event packing", "Stow plan", "After trip")) {
      assertEquals(List.of(), Ticking.typed(book, sheet, "Done"), sheet);
    }
    byte[] posted = Files.readAllBytes(book);
    assertTrue(done(post()).out().contains("Nothing to post"));
    assertEquals(Files.size(book), posted.length);
    assertEquals(wanted, stock());
  }

  @Test
  void aTickIsKeptUntilItIsPostedWhereverItsLineStandsByThen() throws Exception {
    List<Ticking.Line> typed = new ArrayList<>();
    Ticking.edit(
        book,
        open -> {
          typed.addAll(
              Ticking.type(
                  open, "Spares", "Done", l -> l.at("Pieces").equals("1") ? "yes" : (Object) 1));
          // What lay in one bin is counted away: its lines go, the others move up.
          for (OpenBook.Row row : open.rows("Stock")) {
            if (row.text(4).equals("Spare plastics")) {
              row.cell(5).set(0);
            }
          }
        });
    Command again = analyse();
    List<String> kept = Ticking.typed(book, "Spares", "Done");
    long told =
        Command.rows(folder.resolve("reports/demo/input-checks.csv")).stream()
            .filter(
                row -> row.get("message").contains("was typed for a line that is not on the list"))
            .count();
    assertTrue(told > 0, "none told");
    assertFalse(kept.isEmpty(), told + " told, none kept");
    assertEquals(typed.size(), kept.size() + told);
    assertTrue(
        again.out().contains("Post what you typed: " + kept.size() + " entries"), again.out());
    assertEquals(kept, Ticking.typed(book, "Spares", "Done"));
  }

  @Test
  void oneBadEntryAndNothingIsPosted() throws Exception {
    small();
    Ticking.edit(
        book,
        open -> {
          Ticking.type(open, "Spares", "Done", l -> "yes");
          Ticking.type(open, "Stow plan", "Done", l -> l.at("Step").equals("1") ? "maybe" : null);
        });
    byte[] before = Files.readAllBytes(book);
    Command post = post();
    assertEquals(3, post.exitCode(), post.out());
    assertTrue(post.error().contains("Nothing was posted"), post.error());
    assertTrue(post.error().contains("'maybe' is not yes"), post.error());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(3, post("--date", "2026-03-16").exitCode());
    assertArrayEquals(before, Files.readAllBytes(book));
  }

  @Test
  void moreThanWasAskedForIsNotGuessedAt() throws Exception {
    Ticking.edit(book, open -> Ticking.type(open, "Spares", "Done", l -> 99));
    Command post = post();
    assertTrue(post.error().contains("99 is more than the"), post.error());
  }

  @Test
  void aTickOfALineThatMovesNothingPostsNothing() throws Exception {
    List<String> ticked = new ArrayList<>();
    Ticking.edit(
        book,
        open -> {
          Map<String, Integer> columns = new TreeMap<>();
          for (OpenBook.Row row : open.rows("Event packing")) {
            if (columns.isEmpty()) {
              row.cells().forEach((column, cell) -> columns.put(cell.text(), column));
              columns.keySet().removeIf(heading -> !columns.containsKey("What to do"));
            } else if (row.text(columns.get("What to do")).matches("leave.*|stays.*")) {
              row.cell(columns.get("Done")).set("yes");
              ticked.add(row.text(columns.get("Style")));
            }
          }
        });
    assertFalse(ticked.isEmpty());
    assertTrue(done(post("--dry-run")).out().contains("Nothing to post"));
  }

  @Test
  void aCopyOfOurSheetIsNeverRead() throws Exception {
    small();
    Ticking.edit(book, open -> Ticking.type(open, "Spares", "Done", l -> "yes"));
    byLibrary(open -> open.cloneSheet(open.getSheetIndex("Spares"), "My spares"));
    Ticking.edit(book, open -> Ticking.type(open, "Spares", "Done", l -> ""));
    assertTrue(done(post("--dry-run")).out().contains("Nothing to post"));
  }

  @Test
  void theTripCardBecomesATripWithItsHoursAndLosses() throws Exception {
    Map<String, Integer> before = stock();
    Ticking.edit(
        book,
        open -> {
          Ticking.field(open, "Trip card", "Trip", "Practice");
          Ticking.field(open, "Trip card", "Date", "2026-03-14");
          Ticking.field(open, "Trip card", "Days", 1);
          Ticking.field(open, "Trip card", "Hours fished", 6.5);
          Ticking.type(open, "Trip card", "Hours", l -> 2);
          Ticking.type(
              open,
              "Trip card",
              "Lost",
              l ->
                  l.at("Style").equals("Football jig") && l.at("Size").equals("1/2 oz") ? 1 : null);
        });
    Command dry = done(post("--dry-run"));
    assertTrue(dry.out().contains("Trips: Practice | 2026-03-14"), dry.out());
    Command post = done(post());
    assertTrue(post.out().contains("1 row of Trips"), post.out());
    int lost = 0;
    Map<String, Integer> after = stock();
    for (Map.Entry<String, Integer> row : before.entrySet()) {
      lost += row.getValue() - after.getOrDefault(row.getKey(), 0);
    }
    assertEquals(2, lost);
    assertTrue(done(post()).out().contains("Nothing to post"));
  }

  @Test
  void aTripTypedIntoTripsAlreadyIsNotPostedFromTheCardToo() throws Exception {
    Ticking.edit(
        book,
        open -> {
          OpenBook.Row last = open.rows("Trips").get(open.rows("Trips").size() - 1);
          Ticking.field(open, "Trip card", "Trip", last.text(1).toUpperCase() + " ");
          Ticking.field(open, "Trip card", "Date", last.cell(2).day().toString());
          Ticking.field(open, "Trip card", "Hours fished", 6);
        });
    Command post = post();
    assertEquals(3, post.exitCode());
    assertTrue(post.error().contains("stands in Trips already"), post.error());
  }

  @Test
  void postReadsTheFileOfExperienceBesideTheWorkbook() throws Exception {
    small();
    Files.writeString(folder.resolve("experience.csv"), "no experience at all\n");
    Ticking.edit(book, open -> Ticking.type(open, "Buy list", "Done", l -> "yes"));
    done(post());
    assertTrue(
        Files.readString(folder.resolve("reports/small/input-checks.csv"))
            .contains("experience.csv"));
  }

  @Test
  void missingLedgersAreMade() throws Exception {
    small();
    byLibrary(
        open ->
            List.of("Transfers", "Box log", "Counts")
                .forEach(ledger -> open.removeSheetAt(open.getSheetIndex(ledger))));
    Ticking.edit(
        book,
        open -> {
          Ticking.type(open, "Spares", "Done", l -> "yes");
          Ticking.type(open, "Stow plan", "Done", l -> "yes");
        });
    Command post = done(post());
    assertTrue(post.out().matches("(?s).* rows? of Transfers.*"), post.out());
    assertTrue(post.out().matches("(?s).* rows? of Box log.*"), post.out());
    assertFalse(post.out().contains(". Bring "), post.out());
    assertFalse(analyse().out().contains(". Bring "), "the angler's from now on");
  }
}
