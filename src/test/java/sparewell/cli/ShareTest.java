package sparewell.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;
import sparewell.save.file.RunLock;
import sparewell.workbook.Books;

/** Experience of others on the command line: shared by some, used by another. */
class ShareTest {
  @TempDir private Path folder;
  private Path book;
  private Path file;

  @BeforeEach
  void make() throws IOException {
    folder = folder.toRealPath();
    book = Books.season().write(folder.resolve("season.xlsx"));
    file = folder.resolve("club.csv");
  }

  private Command share(Object... books) {
    Object[] all = new Object[books.length + 3];
    all[0] = "share";
    System.arraycopy(books, 0, all, 1, books.length);
    all[books.length + 1] = "--to";
    all[books.length + 2] = file;
    return Command.run(all);
  }

  private static void done(Command command) {
    assertEquals(0, command.exitCode(), command.toString());
  }

  private String shared() throws IOException {
    return Files.readString(file);
  }

  @Test
  void namesOfStylesAndCoversAreSharedAndNothingElse() throws IOException {
    byte[] before = Files.readAllBytes(book);
    done(share(book));
    assertTrue(shared().contains(",style,pieces_per_hour_thrown,Crank,"), shared());
    assertTrue(shared().contains(",spread,pieces_per_hour_thrown,common rate,"), shared());
    // No water, box, colour, money, trip or day of the workbook.
    for (String secret : List.of("lake", "red", "usd", "box", "2026-", "t1", "season")) {
      assertFalse(shared().toLowerCase(Locale.ROOT).contains(secret), secret);
    }
    assertArrayEquals(before, Files.readAllBytes(book));
  }

  @Test
  void aSecondRunPassesOverWhatIsThere() throws IOException {
    done(share(book));
    String first = shared();
    Command again = share(book);
    done(again);
    assertTrue(again.out().contains("in the file already"), again.out());
    assertEquals(first, shared());
    Books.season().plus("Losses", "T1|Crank|3/8|Red|1|snag|no").write(book);
    done(share(book));
    assertFalse(first.equals(shared()));
    // The number of rows may differ: a spread that only one style tells of has none.
    assertEquals(logs(first), logs(shared()), "still one log, the same");
    assertEquals(1, logs(first).size());
    List<String> things =
        shared()
            .lines()
            .skip(1)
            .map(line -> line.replaceAll("^.*?,.*?,.*?,|,[-0-9.].*", ""))
            .toList();
    assertEquals(things.stream().distinct().toList(), things, "the earlier state is replaced");
    assertTrue(things.contains("style,pieces_per_hour_thrown,Crank,Hard baits"), things.toString());
  }

  private static List<String> logs(String shared) {
    return shared.lines().skip(1).map(line -> line.split(",")[0]).distinct().toList();
  }

  @Test
  void aCopyOfAWorkbookIsNotAnotherLog() throws IOException {
    Path copy = Files.copy(book, folder.resolve("copy.xlsx"));
    Command both = share(book, copy);
    done(both);
    assertTrue(both.out().contains("now holds 1 log."), both.out());
    String first = shared();
    done(share(copy));
    done(share(book));
    assertEquals(first, shared());
    Books.season().plus("Losses", "T1|Crank|3/8|Red|1|snag|no").write(book);
    Files.copy(book, copy, StandardCopyOption.REPLACE_EXISTING);
    done(share(copy));
    Command later = share(book);
    assertTrue(later.out().contains("now holds 1 log."), later.out());
    assertFalse(first.equals(shared()));
  }

  @Test
  void twoRunsDoNotWriteOneFileAtATime() throws Exception {
    done(share(book));
    String first = shared();
    RunLock other = RunLock.take(file);
    try {
      Command second = share(book);
      assertEquals(3, second.exitCode());
      assertTrue(second.error().contains("another run"), second.error());
    } finally {
      other.close();
    }
    assertEquals(first, shared());
    done(share(book));
  }

  @Test
  void aLinkToTheFileStaysOne() throws IOException {
    Path linked = Files.createDirectory(folder.resolve("cloud")).resolve("ours.csv");
    Files.createSymbolicLink(file, linked);
    done(Command.run("share", book, "--to", linked));
    String first = Files.readString(linked);
    Books.season().plus("Losses", "T1|Crank|3/8|Red|1|snag|no").write(book);
    done(share(book));
    assertTrue(Files.isSymbolicLink(file));
    assertFalse(first.equals(Files.readString(linked)), "what it leads to is written");
  }

  @Test
  void brokenWorkbooksAreListedAtTheEndAndTheOthersShared() throws IOException {
    Path broken = Files.writeString(folder.resolve("broken.xlsx"), "no workbook");
    Command command = share(broken, book, folder.resolve("gone.xlsx"));
    assertEquals(3, command.exitCode());
    assertTrue(command.error().startsWith("Not shared, 2 of 3:"), command.error());
    assertTrue(command.error().contains("gone.xlsx: there is no such file"), command.error());
    assertTrue(shared().contains(",Crank,"));
  }

  @Test
  void aFileThatIsNotOursIsLeftAlone() throws IOException {
    for (String text : List.of("my notes", "log_id,fingerprint\r\n")) {
      Files.writeString(file, text);
      Command command = share(book);
      assertEquals(3, command.exitCode());
      assertTrue(command.error().contains("left as it is"), command.error());
      assertEquals(text, shared());
    }
    Files.delete(file);
    done(share(book));
    Files.writeString(file, shared() + "one,more,line\r\n");
    String damaged = shared();
    Command command = share(book);
    assertEquals(3, command.exitCode());
    assertTrue(command.error().contains("They would be lost"), command.error());
    assertEquals(damaged, shared());
  }

  private static List<String> sheets(Path workbook) throws IOException {
    List<String> names = new ArrayList<>();
    try (Workbook read = WorkbookFactory.create(workbook.toFile(), null, true)) {
      read.sheetIterator().forEachRemaining(sheet -> names.add(sheet.getSheetName()));
    }
    return names;
  }

  @Test
  void theClubsWorkbookKeepsWhatOthersWroteInIt() throws IOException {
    Path report = folder.resolve("rates.xlsx");
    done(Command.run("share", book, "--to", file, "--report", report));
    assertEquals(List.of("Club rates", "About"), sheets(report));
    assertFalse(Files.exists(folder.resolve("rates-backups")));
    Command again = Command.run("share", book, "--to", file, "--report", report);
    done(again);
    assertEquals(List.of("Club rates", "About"), sheets(report));
    assertTrue(again.out().contains("Backup of what it was"), again.out());
    byte[] before = Files.readAllBytes(Files.writeString(folder.resolve("mine.xlsx"), "my own"));
    Command foreign =
        Command.run("share", book, "--to", file, "--report", folder.resolve("mine.xlsx"));
    assertEquals(3, foreign.exitCode());
    assertArrayEquals(before, Files.readAllBytes(folder.resolve("mine.xlsx")));
  }

  @Test
  void anotherLogUsesItAndSaysSo() throws IOException {
    Path other =
        Books.season()
            .plus("Losses", "T1|Crank|3/8|Red|2|snag|no")
            .write(Files.createDirectory(folder.resolve("other")).resolve("mine.xlsx"));
    Path reports = folder.resolve("reports");
    Path rates = reports.resolve("mine/loss-rates.csv");
    done(Command.run("analyse", other, "--reports", reports));
    String alone = Files.readString(rates);
    done(share(book));
    done(Command.run("analyse", other, "--reports", reports, "--experience", file));
    String beside = Files.readString(rates);
    assertFalse(alone.equals(beside));
    assertEquals(alone.lines().findFirst(), beside.lines().findFirst(), "columns are fixed");
    assertTrue(
        Files.readString(reports.resolve("mine/input-checks.csv"))
            .contains("club.csv holds the experience of 1 other log"));
    // Found by itself beside the workbook; own rows do not count.
    Files.copy(file, folder.resolve("other/experience.csv"));
    done(Command.run("analyse", other, "--reports", reports));
    assertEquals(beside, Files.readString(rates));
    file = folder.resolve("own.csv");
    done(share(other));
    Files.move(file, folder.resolve("other/experience.csv"), StandardCopyOption.REPLACE_EXISTING);
    done(Command.run("analyse", other, "--reports", reports));
    assertEquals(alone, Files.readString(rates));
  }

  /** A member of a club: so many cranks lost in each of five trips of three hours thrown. */
  private Path member(int number, int lost) {
    Books books = Books.season();
    for (int t = 2; t <= 6; t++) {
      books
          .plus("Trips", "T" + number + t + "|2026-04-0" + t + "|8|1|wood")
          .plus("Style hours", "T" + number + t + "|Crank|3\nT" + number + t + "|Worm|5")
          .plus("Losses", "T" + number + t + "|Crank|'3/8|Red|" + lost + "|snag|no");
    }
    return books.write(folder.resolve("member" + number + ".xlsx"));
  }

  @Test
  void aBlankLogGetsTheClubsRatesShareOfHoursAndWideRanges() throws IOException {
    done(share(member(1, 1), member(2, 2), member(3, 2), member(4, 3)));
    Path blank =
        Books.season()
            .with("Trips", "Trip|Date|Hours|Days|Cover")
            .without("Style hours")
            .with("Losses", "Trip|Style|Size|Colour|Lost|Cause|Ran out")
            .write(folder.resolve("blank.xlsx"));
    Path reports = folder.resolve("reports");
    done(Command.run("analyse", blank, "--reports", reports, "--experience", file));
    String[] crank = Files.readAllLines(reports.resolve("blank/loss-rates.csv")).get(1).split(",");
    // Four logs with 7 to 17 pieces in 18 hours thrown.
    assertEquals(6.5, Double.parseDouble(crank[7]), 1.5);
    assertTrue(Double.parseDouble(crank[8]) < 4.5 && Double.parseDouble(crank[9]) > 9, crank[8]);
    assertEquals("0", crank[10]);
    assertEquals("never thrown on a logged trip: taken from 4 other logs", crank[11]);
    String[] spares = Files.readAllLines(reports.resolve("blank/spares.csv")).get(1).split(",");
    assertEquals("Crank", spares[0]);
    assertEquals(24 * 3 / 8.0, Double.parseDouble(spares[5]), 1e-6, "hours thrown as others do");
  }

  @Test
  void aFileOfExperienceThatCannotBeUsedIsTold() throws IOException {
    Command missing = Command.run("analyse", book, "--experience", folder.resolve("no.csv"));
    assertEquals(2, missing.exitCode());
    assertTrue(missing.error().contains("there is no such file"), missing.error());
    Files.writeString(folder.resolve("experience.csv"), "something else");
    Path reports = folder.resolve("reports");
    done(Command.run("analyse", book, "--reports", reports));
    assertTrue(
        Files.readString(reports.resolve("season/input-checks.csv"))
            .contains("experience.csv lies beside the workbook, but cannot be read"));
  }
}
