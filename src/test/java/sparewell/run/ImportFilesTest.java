package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.season.Trip;
import sparewell.units.MassUnit;
import sparewell.workbook.Books;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputSheets;

/** CSV files are read whatever their encoding, delimiter, headings and dates. */
class ImportFilesTest extends ImportFixture {
  @Test
  void aRowIsKnownHoweverItIsWritten() throws Exception {
    Outcome outcome =
        take(
            InputSheets.LOSSES,
            "TRIP;style;Size;Colour;Lost;Cause;Ran out\nt1;CRANK;3/8;red;2,0;Snags;\n");
    ok(outcome);
    assertTrue(outcome.summary().get(0).contains("1 was there already"), outcome.summary().get(0));
    outcome = take(InputSheets.TRIPS, "Trip\tDate\tHours\nT1\t2026-03-01\t8,0\n");
    ok(outcome);
    assertTrue(outcome.summary().get(0).contains("0 rows added"), outcome.summary().get(0));
  }

  @Test
  void aTripTwiceInAFileIsThereAlreadyAndOneThatDiffersIsRejected() throws Exception {
    Outcome outcome =
        take(InputSheets.TRIPS, "Trip,Date,Hours\nT9,2026-04-05,6\nt9,2026-04-05,6.0\n");
    ok(outcome);
    assertEquals(
        "Trips: 1 row added from " + folder.resolve("in.csv") + "; 1 was there already.",
        outcome.summary().get(0));
    outcome = take(InputSheets.TRIPS, "Trip,Date,Hours\nT8,2026-04-06,6\nT8,2026-04-06,7\n");
    assertTrue(outcome.summary().get(0).contains("1 rejected"), outcome.summary().get(0));
  }

  @Test
  void semicolonsDecimalCommasAndWindowsText() throws Exception {
    Files.write(
        folder.resolve("in.csv"),
        "Trip;Date;Cover;Hours\nHerbst;2026-04-05;M\u00fchlteich \u20ac;7,25\n"
            .getBytes(Charset.forName("windows-1252")));
    remake(Books.season().with("Trips", "Trip|Date|Hours\nT1|2026-03-01|8"));
    refused(take(InputSheets.TRIPS, folder.resolve("in.csv")), "no column", "Cover");
    remake(Books.season().with("Trips", "Trip|Date|Hours|Cover\nT1|2026-03-01|8|Pond"));
    ok(take(InputSheets.TRIPS, folder.resolve("in.csv")));
    assertEquals(7.25, season().trips().get(1).fishedHours().orElseThrow());
    assertEquals("M\u00fchlteich \u20ac", season().trips().get(1).cover().orElseThrow());
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE"})
  void byteOrderMarks(String charset) throws Exception {
    Files.write(
        folder.resolve("in.csv"),
        "\ufeffTrip,Style,Colour,Lost\nT1,Worm,Ros\u00e9,2\n".getBytes(Charset.forName(charset)));
    ok(take(InputSheets.LOSSES, folder.resolve("in.csv")));
    assertEquals("Ros\u00e9", season().losses().get(1).item().colour());
  }

  @Test
  void aTextThatWouldBeLostIsNoReasonToGuess() throws Exception {
    refused(
        take(InputSheets.STYLE_HOURS, "Trip,Style\nT1,Worm\n"),
        "in.csv cannot be read as Style hours: its header lacks Hours");
    remake(Books.season().with("Losses", "Trip|Style|Lost\nT1|Crank|2"));
    refused(take(InputSheets.LOSSES, GREEN_WORM), "no column for the values in", "Colour, Cause");
  }

  @Test
  void unitsOfTheFileAreThoseOfItsHeader() throws Exception {
    remake(
        Books.season()
            .with(
                "Stock",
                "Style|Size|Colour|Box|Count|Weight each (oz)\nCrank|'3/8|Red|Tray A|6|0.5"));
    ok(
        take(
            InputSheets.STOCK,
            "Style,Box,Count,Weight each (g)\nWorm,Shelf,1,28.349523125\nWorm,Tray A,1,1/2 oz\n"));
    assertEquals(1.0, season().stock().get(1).weightEach().orElseThrow().in(MassUnit.OUNCE), 1e-4);
    assertEquals(0.5, season().stock().get(2).weightEach().orElseThrow().in(MassUnit.OUNCE), 1e-4);
  }

  /** One date that no other order allows proves the order of all. */
  @Test
  void aDateProvesTheOrderOfItsFile() throws Exception {
    Outcome outcome =
        take(
            InputSheets.TRIPS,
            "Trip name,Day,Hours fished,Notes\nA,05/03/2026,4,x\nB,27/11/2025,5,\n");
    ok(outcome);
    assertTrue(
        outcome.summary().toString().contains("as day-month-year, as '27/11/2025' proves"),
        outcome.toString());
    assertTrue(
        outcome.summary().toString().contains("'Hours fished' as Hours"), outcome.toString());
    assertEquals(
        List.of(LocalDate.of(2026, 3, 1), LocalDate.of(2026, 3, 5), LocalDate.of(2025, 11, 27)),
        season().trips().stream().map(Trip::date).toList());
  }

  @Test
  void withoutProofTheOrderIsAskedForAndNothingIsWritten() throws Exception {
    byte[] before = Files.readAllBytes(book);
    String trips = "Trip,Date,Hours\nA,05/03/2026,4\nB,06/03/2026,5\n";
    refused(take(InputSheets.TRIPS, trips), NO_ROW, "--dates dmy or --dates mdy");
    refused(
        take(InputSheets.TRIPS, trips + "C,27/03/2026,4\nD,03/27/2026,4\n"),
        NO_ROW,
        "--dates dmy or --dates mdy");
    assertArrayEquals(before, Files.readAllBytes(book));
    Path file = csv("asked.csv", "Trip,Date,Hours\nA,05.03.26,4\nB,06.03.2026,5\n");
    ok(take(InputSheets.TRIPS, file, DateOrder.DMY));
    assertEquals(LocalDate.of(2026, 3, 5), season().trips().get(1).date());
  }

  /** Losses may name a trip by its date, written as in the rest of the file. */
  @Test
  void tripsGoByDatesInFiguresToo() throws Exception {
    Path file = csv("asked.csv", "Trip,Lure,How many\n3/1/2026,Worm,2 pcs\n");
    Outcome outcome = take(InputSheets.LOSSES, file, DateOrder.MDY);
    ok(outcome);
    assertEquals("T1", season().losses().get(1).trip());
    assertTrue(
        outcome.summary().toString().contains("'2 pcs' in Lost has a word behind the number"),
        outcome.toString());
  }

  /** The sheet's own names come first; another column may then be anything. */
  @Test
  void ownNamesBeatOthers() throws Exception {
    ok(take(InputSheets.LOSSES, "Bait,Number,Trip,Style,Lost\nlive,77,T1,Worm,2\n"));
    assertEquals("Worm", season().losses().get(1).item().style());
    assertEquals(2, season().losses().get(1).lostPieces());
  }
}
