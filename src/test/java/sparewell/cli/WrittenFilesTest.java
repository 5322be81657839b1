package sparewell.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.Command;
import sparewell.Main;
import sparewell.save.Programs;
import sparewell.workbook.Books;

/** Files that commands write, and those they leave alone. */
class WrittenFilesTest extends CommandFixture {
  /** The folder named like the workbook may be the angler's own. */
  @Test
  void reportsLeaveTheFilesOfOthersAlone() throws IOException {
    Path mine = Files.createDirectories(folder.resolve("season"));
    Path log = Files.writeString(mine.resolve("phone.csv"), "Date,Trip\n");
    Path prices = Files.writeString(mine.resolve("buy-list.csv"), "Part,Price\n");
    Command command = Command.run("analyse", book, "--reports", folder);
    assertEquals(0, command.exitCode(), command.toString());
    assertEquals("Date,Trip\n", Files.readString(log));
    assertEquals("Part,Price\n", Files.readString(prices));
    assertTrue(Files.exists(mine.resolve("buy-list (2).csv")));
    assertTrue(command.error().contains("buy-list.csv was not written by"), command.error());
  }

  /** Java asks for the folder of temporary files once, so another process must find it missing. */
  @Test
  void aMissingFolderForTemporaryFilesIsNamed() throws Exception {
    Path missing = folder.resolve("no such folder");
    Process run =
        Programs.java(
            Main.class,
            List.of("-Djava.io.tmpdir=" + missing),
            "analyse",
            book,
            "--reports",
            reports);
    String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertFalse(said.contains("the CSV files cannot be written"), said);
    assertTrue(run.waitFor() == 0 || said.contains("no such folder, cannot be written to"), said);
  }

  @Test
  void aFolderToWriteToIsNamedAsSuch() throws IOException {
    byte[] before = Files.readAllBytes(book);
    refused(
        analyse(book, "--out", Files.createDirectories(folder.resolve("there"))),
        "is a folder",
        folder.resolve("there").resolve("season.xlsx").toString());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(List.of("season.xlsx"), files());
  }

  @Test
  void analyseWritesWorkbookBackupAndReports() throws IOException {
    byte[] before = Files.readAllBytes(book);
    Command command = analyse(book, "--as-of", "2026-06-30", "--budget", "40");
    assertEquals(0, command.exitCode(), command.error());
    assertEquals("", command.error());
    assertTrue(command.out().contains("Do this, in this order"), command.out());
    assertTrue(command.out().contains("Backup of what it was: "), command.out());
    assertTrue(Files.exists(reports.resolve("season/spares.csv")));
    Path backup =
        folder.resolve(
            files().stream().filter(f -> f.startsWith("season-backups/")).findFirst().get());
    assertTrue(
        backup.getFileName().toString().matches("season \\d{4}-\\d\\d-\\d\\d \\d{6}\\.xlsx"));
    assertArrayEquals(before, Files.readAllBytes(backup));
  }

  @Test
  void checkWritesNothingAtAll() throws IOException {
    Path bad = bad("bad.xlsx");
    byte[] before = Files.readAllBytes(bad);
    Command command = Command.run("check", book, bad);
    assertEquals(0, command.exitCode());
    assertTrue(command.out().contains("error, Losses E3: 'minus one' in Lost"), command.out());
    assertTrue(command.out().contains("Nothing was written."), command.out());
    assertArrayEquals(before, Files.readAllBytes(bad));
    assertEquals(List.of("bad.xlsx", "season.xlsx"), files());
  }

  @Test
  void outTakesOneWorkbook() throws IOException {
    Path out = folder.resolve("answer.xlsx");
    byte[] before = Files.readAllBytes(book);
    usage(analyse(book, bad("bad.xlsx"), "--out", out), "--out takes one workbook");
    assertEquals(0, analyse(book, "--out", out).exitCode());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertFalse(files().stream().anyMatch(f -> f.contains("-backups")), files().toString());
    assertEquals(0, analyse(book, "--out", out).exitCode());
    assertTrue(files().stream().anyMatch(f -> f.startsWith("answer-backups/answer ")));
    refused(analyse(book, "--out", folder.resolve("answer.csv")), "must end in .xlsx");
  }

  @Test
  void foldersStandForTheirWorkbooks() throws IOException {
    Path inside = Files.createDirectory(folder.resolve("all"));
    Files.copy(book, inside.resolve("b.xlsx"));
    Files.copy(book, inside.resolve("A.XLSX"));
    Files.writeString(inside.resolve("~$b.csv"), "");
    Files.writeString(inside.resolve("note.txt"), "");
    Command command = analyse(inside, inside.resolve("b.xlsx"));
    assertEquals(0, command.exitCode(), command.error());
    assertTrue(command.out().contains("2 of 2 workbooks done."), command.out());
    assertTrue(Files.exists(reports.resolve("A/spares.csv")));
    Path empty = Files.createDirectory(folder.resolve("empty"));
    usage(analyse(empty), "There is no workbook");
  }

  @Test
  void workbooksOfOneNameGetFoldersOfTheirOwn() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    Files.copy(book, other.resolve("Season.xlsx"));
    Files.copy(book, other.resolve("season (2).xlsx"));
    Command command = analyse(book, other.resolve("Season.xlsx"), other.resolve("season (2).xlsx"));
    assertEquals(0, command.exitCode(), command.error());
    for (String name : List.of("season", "Season (2)", "season (2) (2)")) {
      assertTrue(Files.exists(reports.resolve(name).resolve("spares.csv")), files().toString());
    }
  }

  @Test
  void reportsThatCannotBeWrittenLeaveTheWorkbookAsItWas() throws IOException {
    byte[] before = Files.readAllBytes(book);
    Files.createDirectories(reports.getParent());
    Files.writeString(reports, "in the way");
    refused(analyse(book), "cannot be written into", "The workbook is as it was");
    assertArrayEquals(before, Files.readAllBytes(book));
  }

  @Test
  void lockedOrProtected() throws IOException {
    Files.writeString(folder.resolve(".~lock.season.xlsx#"), "");
    refused(analyse(book), "has it open", "delete .~lock.season.xlsx#");
    assertEquals(0, Command.run("check", book).exitCode());
    Path locked =
        Books.season().touch(workbook -> workbook.lockStructure()).write(folder.resolve("p.xlsx"));
    refused(analyse(locked), "structure is protected", "Take the protection");
  }

  @ParameterizedTest
  @CsvSource({
    "us, false, blank-us",
    "metric, false, blank-metric",
    "US, true, demo",
    "Metric, true, demo-metric"
  })
  void newMakesTheKeptWorkbook(String units, boolean demo, String kept) throws IOException {
    Path fresh = folder.resolve("fresh.xlsx");
    Command run =
        demo
            ? Command.run("new", fresh, "--units", units, "--demo")
            : Command.run("new", fresh, "--units", units);
    assertEquals(0, run.exitCode(), run.error());
    assertArrayEquals(
        Files.readAllBytes(Path.of("workbook-templates", kept + ".xlsx")),
        Files.readAllBytes(fresh));
  }

  @Test
  void newNeverOverwrites() throws IOException {
    Path fresh = folder.resolve("fresh.xlsx");
    assertEquals(0, Command.run("new", fresh, "--units", "METRIC").exitCode());
    byte[] before = Files.readAllBytes(fresh);
    refused(Command.run("new", fresh), "is there already");
    assertArrayEquals(before, Files.readAllBytes(fresh));
    refused(Command.run("new", folder.resolve("nowhere/fresh.xlsx")), "could not be written");
  }

  @Test
  void importAddsRowsOnce() throws IOException {
    Path csv = Files.writeString(folder.resolve("l.csv"), "Trip,Style,Lost\nT1,Worm,2\n");
    Command command = Command.run("import", book, "--losses", csv, "--dry-run");
    assertTrue(command.out().contains("1 row would be added"), command.toString());
    command = Command.run("import", book, "--losses", csv);
    assertEquals(0, command.exitCode(), command.error());
    assertTrue(command.out().contains("Losses: 1 row added from"), command.out());
    command = Command.run("import", book, "--losses", csv);
    assertTrue(command.out().contains("the workbook is as it was"), command.out());
    assertEquals("", Command.run("import", book, "--losses", csv, "--quiet").out());
    refused(Command.run("import", book, "--trips", folder.resolve("none.csv")), "no such file");
    refused(Command.run("import", folder.resolve("none.xlsx"), "--losses", csv), "no such file");
  }

  @Test
  void soManyBackupsStayAsAreAskedFor() throws Exception {
    Path backups = folder.resolve("season-backups");
    for (int run = 0; run < 3; run++) {
      assertEquals(0, analyse(book, "--keep-backups", "2").exitCode());
    }
    try (Stream<Path> kept = Files.list(backups)) {
      assertEquals(2, kept.count());
    }
    usage(analyse(book, "--keep-backups", "0"), "--keep-backups must be at least 1");
    usage(analyse(book, "--keep-backups", "few"), "--keep-backups");
    Path losses = Files.writeString(folder.resolve("l.csv"), "Trip,Style,Lost\n");
    usage(
        Command.run("import", book, "--losses", losses, "--keep-backups", "0"),
        "--keep-backups must be at least 1");
  }

  @Test
  void aSignatureIsDroppedWhereAskedFor() throws Exception {
    Path signed = SignedBook.of(book, folder.resolve("signed.xlsx"));
    byte[] before = Files.readAllBytes(signed);
    refused(analyse(signed), "digitally signed", "--drop-signature");
    assertArrayEquals(before, Files.readAllBytes(signed));
    Command dropped = analyse(signed, "--drop-signature");
    assertEquals(0, dropped.exitCode(), dropped.error());
    assertTrue(dropped.out().contains("signature"), dropped.out());
    try (ZipFile zip = new ZipFile(signed.toFile())) {
      assertTrue(zip.stream().noneMatch(e -> e.getName().contains("signature")));
      for (String part : List.of("_rels/.rels", "[Content_Types].xml")) {
        String text =
            new String(
                zip.getInputStream(zip.getEntry(part)).readAllBytes(), StandardCharsets.UTF_8);
        assertFalse(text.contains("signature"), text);
      }
    }
    assertTrue(
        Files.readString(reports.resolve("signed/input-checks.csv")).contains("digitally signed"));
    assertEquals(0, analyse(signed).exitCode());
  }
}
