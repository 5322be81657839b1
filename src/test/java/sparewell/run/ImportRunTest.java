package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import sparewell.Command;
import sparewell.ooxml.Zips;
import sparewell.save.PartComparison;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Trip;
import sparewell.workbook.Books;
import sparewell.workbook.InputSheets;

/** Rows of CSV files are added to the workbook, and nothing else of it changes. */
class ImportRunTest extends ImportFixture {
  @Test
  void allFiveSheetsAreReadBack() throws Exception {
    remake(
        Books.season()
            .with(
                "Restocks",
                "Date|Style|Size|Colour|Box|Count|Cost\n2026-02-01|Worm||Green|Tray A|1|5"));
    byte[] before = Files.readAllBytes(book);
    Outcome outcome =
        take(
            source(
                InputSheets.LOSSES,
                csv("l.csv", "Style,Trip,Lost,Color,Size,Ran out\ncrank,t2,3,red,3/8,x\n")),
            source(
                InputSheets.TRIPS,
                csv("t.csv", "Date,Trip,Hours,Days,Cover\n2026-04-05,T2,6.5,2,Grass\n")),
            source(InputSheets.STYLE_HOURS, csv("h.csv", "Trip,Style,Hours\nT2,Crank,6:30\n")),
            source(
                InputSheets.RESTOCKS,
                csv(
                    "r.csv",
                    "Date,Style,Colour,Box,Qty,Cost\n2026-04-06,Worm,Green,Tray A,0.5,$2.50\n")),
            source(
                InputSheets.STOCK,
                csv("s.csv", "Style,Box,Count,Counted on\nWorm,Shelf,1.5,2026-04-07\n")));
    ok(outcome);
    Season season = season();
    assertEquals(
        new Trip(
            "T2",
            LocalDate.of(2026, 4, 5),
            OptionalDouble.of(6.5),
            2,
            Optional.of("Grass"),
            season.trips().get(1).origin()),
        season.trips().get(1));
    assertEquals(6.5, season.styleHours().get(2).knownHours());
    Loss loss = season.losses().get(1);
    assertEquals("Crank 3/8 Red", loss.item().spoken());
    assertEquals(3, loss.lostPieces());
    assertTrue(loss.ranOut());
    assertEquals(5, season.restocks().get(1).addedPieces());
    assertEquals(15, season.stock().get(3).countedPieces());
    assertEquals(
        List.of(
            "xl/worksheets/sheet3.xml has other bytes",
            "xl/worksheets/sheet6.xml has other bytes",
            "xl/worksheets/sheet7.xml has other bytes",
            "xl/worksheets/sheet8.xml has other bytes",
            "xl/worksheets/sheet9.xml has other bytes"),
        PartComparison.differences(before, Files.readAllBytes(book), List.of()).stream()
            .sorted()
            .toList());
    Path backup = folder.resolve("season-backups/season 2026-06-30 201500.xlsx");
    assertArrayEquals(before, Files.readAllBytes(backup));
  }

  @Test
  void theLedgersTakeRowsToo() throws Exception {
    remake(
        Books.season()
            .with("Transfers", "Date|Style|Size|Colour|Count|From box|To box|Note")
            .with("Box log", "Date|Box|Compartment|Checked|Note")
            .with("Counts", "Date|Style|Size|Colour|Box|Count|Note"));
    ok(
        take(
            source(
                InputSheets.TRANSFERS,
                csv(
                    "t.csv",
                    "Date,Style,Colour,Qty,From,To\n2026-04-06,Worm,Green,0.5,Tray A,Shelf\n")),
            source(
                InputSheets.BOX_LOG,
                csv("b.csv", "Date,Box,Compartment,Checked\n2026-04-06,Tray A,Stern,x\n")),
            source(
                InputSheets.COUNTS,
                csv("c.csv", "Date,Style,Colour,Box,Count\n2026-04-07,Worm,Green,Shelf,2\n"))));
    Season season = season();
    assertEquals(5, season.transfers().get(0).carriedPieces());
    assertEquals("Stern", season.boxes().get(0).compartment());
    assertEquals(20, season.recounts().get(0).countedPieces());
  }

  @Test
  void onlyTextIsAddedToTheSheet() throws Exception {
    String before = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/worksheets/sheet8.xml");
    ok(take(InputSheets.LOSSES, GREEN_WORM));
    String after = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/worksheets/sheet8.xml");
    String added = after.substring(after.indexOf("<row r=\"3\""), after.indexOf("</sheetData>"));
    assertEquals(before, after.replace(added, "").replace("A1:G3", "A1:G2"));
    assertTrue(before.contains("<dimension ref=\"A1:G2\"/>"), before);
  }

  @Test
  void theSameFileTwiceAddsNothing() throws Exception {
    String twoAlike = LOSSES + "T1,Worm,,Green,1,fish\nT1,Worm,,Green,1,fish\n";
    ok(take(InputSheets.LOSSES, twoAlike));
    assertEquals(3, season().losses().size());
    byte[] before = Files.readAllBytes(book);
    Outcome again = take(InputSheets.LOSSES, twoAlike);
    ok(again);
    assertArrayEquals(before, Files.readAllBytes(book));
    assertTrue(again.summary().get(0).contains("0 rows added"), again.summary().get(0));
    assertTrue(again.summary().get(0).contains("2 were there already"), again.summary().get(0));
    ok(take(InputSheets.LOSSES, twoAlike + "T1,Worm,,Green,1,fish\n"));
    assertEquals(4, season().losses().size());
  }

  @Test
  void unusableFilesAreAllListedAndNothingIsWritten() throws Exception {
    Outcome outcome =
        take(
            source(InputSheets.TRIPS, folder.resolve("none.csv")),
            source(InputSheets.LOSSES, book),
            source(InputSheets.RESTOCKS, csv("r.csv", "Date,Style,Box,Count\n")),
            source(InputSheets.STOCK, csv("s.csv", "")));
    refused(
        outcome,
        "none.csv: there is no such file",
        "season.xlsx is a workbook",
        "has no sheet 'Restocks'",
        "s.csv is empty");
  }

  @Test
  void rejectedRowsGoToAFileThatCanBeMended() throws Exception {
    Outcome outcome =
        take(
            InputSheets.LOSSES,
            LOSSES + "T1,Worm,,Green,1,fish\nT1,Warm,,Green,3,fish\nT1,Worm,,=1+1,-2,\n");
    assertEquals(ExitCode.DONE, outcome.exitCode());
    assertEquals(2, season().losses().size());
    Path rejected = folder.resolve("in rejected.csv");
    List<String> lines = Files.readAllLines(rejected);
    assertEquals("\ufeffTrip,Style,Size,Colour,Lost,Cause,Reason", lines.get(0));
    assertTrue(lines.get(1).startsWith("T1,Warm,,Green,3,fish,"), lines.get(1));
    assertTrue(lines.get(1).contains("did you mean 'Worm'?"), lines.get(1));
    assertTrue(lines.get(2).startsWith("T1,Worm,,'=1+1,-2,,"), lines.get(2));
    assertTrue(outcome.problems().get(1).contains("in.csv line 4 rejected"), outcome.toString());
    assertFalse(outcome.summary().toString().contains("line 3 of"), outcome.toString());
    assertTrue(
        outcome
            .summary()
            .contains("ATTENTION: 2 of 3 rows WERE LEFT OUT; each is named with its reason."),
        outcome.toString());
    Files.writeString(
        rejected, Files.readString(rejected).replace("Warm", "Worm").replace("-2", "2"));
    ok(take(InputSheets.LOSSES, rejected));
    assertEquals("=1+1", season().losses().get(3).item().colour());
    assertEquals(4, season().losses().size());
  }

  @Test
  void aMendedFileOfRejectedRowsIsNotOverwritten() throws Exception {
    csv("in rejected.csv", "mended by hand");
    take(InputSheets.LOSSES, LOSSES + "T1,Warm,,Green,1,fish\nT1,Worm,,Green,1,fish\n");
    assertEquals("mended by hand", Files.readString(folder.resolve("in rejected.csv")));
    assertTrue(
        Command.names(folder).contains("in rejected (2).csv"), Command.names(folder).toString());
  }

  @Test
  void lossesOnATripOfTheSameImport() throws Exception {
    Outcome outcome =
        take(
            source(
                InputSheets.LOSSES,
                csv("l.csv", LOSSES + "T8,Worm,,,1,\nT9,Worm,,,1,\nT1,Wrom,,,1,\n")),
            source(
                InputSheets.TRIPS,
                csv("t.csv", "Trip,Date,Hours\nT8,2026-05-01,5\nT9,2026-15-01,5\n")));
    assertEquals(
        List.of(
            folder
                + "/t.csv line 3 rejected: '2026-15-01' in Date cannot be read as a date from 1950 to"
                + " 2199; write the year first, like 2026-05-03",
            folder
                + "/l.csv line 3 rejected: 'T9' in Trip is in a row that was left out: line 3"
                + " of t.csv; correct that row first",
            folder
                + "/l.csv line 4 rejected: 'Wrom' in Style is not in the sheet Styles; did you mean"
                + " 'Worm'?"),
        outcome.problems());
    assertEquals(2, season().trips().size());
  }

  @Test
  void aDryRunWritesNothing() throws Exception {
    byte[] before = Files.readAllBytes(book);
    Path file = csv("in.csv", LOSSES + "T1,Worm,,Green,1,fish\nT1,Warm,,Green,1,fish\n");
    Outcome outcome = dryRun(InputSheets.LOSSES, file);
    assertEquals(ExitCode.DONE, outcome.exitCode());
    assertTrue(
        outcome.summary().contains("  line 2: T1 | Worm | Green | 1 | fish"), outcome.toString());
    assertTrue(outcome.summary().contains("Dry run: nothing was written."), outcome.toString());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(List.of("in.csv", "season.xlsx"), Command.names(folder));
  }

  @Test
  void aLockedWorkbookStaysAsItWas() throws Exception {
    csv("~$season.xlsx", "");
    refused(
        take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\nT1,Warm,,,1,\n"),
        "has it open",
        "delete ~$season.xlsx");
    assertFalse(Command.names(folder).contains("in rejected.csv"));
  }

  @Test
  void whatLooksLikeAnEscapeStaysText() throws Exception {
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,_x0041_ <&>,1,fish\n"));
    assertEquals("_x0041_ <&>", season().losses().get(1).item().colour());
  }

  @Test
  void aFileWithoutAUsableRowIsRefused() throws Exception {
    refused(take(InputSheets.LOSSES, LOSSES + "T1,Wrm,,Green,1,fish\n"), NO_ROW, "'Worm'?");
    assertEquals(List.of("in.csv", "season.xlsx"), Command.names(folder));
    Outcome outcome = take(InputSheets.LOSSES, LOSSES + "T1,Wrm,,Green,1,\nT1,Worm,,Green,1,\n");
    assertEquals(ExitCode.DONE, outcome.exitCode());
    assertTrue(outcome.problems().get(0).endsWith("did you mean 'Worm'?"), outcome.toString());
  }

  @Test
  void aSecondTripOfANameIsExplained() throws Exception {
    Outcome outcome =
        take(InputSheets.TRIPS, "Trip,Date,Hours\nt1,2026-05-20,4\nT2,2026-05-21,4\n");
    assertEquals(
        List.of(
            folder
                + "/in.csv line 2 rejected: the name 'T1' in Trip is that of row 2, a trip of"
                + " 2026-03-01; rename this one, for example to 'T1 2026-05-20', in its"
                + " losses and style hours too"),
        outcome.problems());
  }
}
