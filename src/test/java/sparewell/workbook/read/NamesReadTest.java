package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.rates.fit.Observation;
import sparewell.rates.history.SeasonHistory;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.season.StyleHours;
import sparewell.workbook.Books;

/** Names of styles, places and trips, however they are spelled. */
class NamesReadTest {
  @Test
  void namesMatchHoweverWrittenAndShowTheFirstSpelling() {
    Season season =
        Reading.of(
                Books.season()
                    .with("Stock", "Style|Size|Colour|Box|Count\ncrank|3/8 OZ|Red  Craw|TRAY-a|6")
                    .with(
                        "Losses",
                        "Trip|Style|Size|Colour|Lost\nt1|CRANK|3/8 oz|red craw|1\nT-1|Crank|3/8 Oz|RED CRAW|1")
                    .with("Events", "Event|Date|Hours|Cover\nCup|2026-08-01|8|WOOD")
                    .with("Event plan", "Event|Style|Hours|Colours\ncup|crank|4|red craw"))
            .season();
    // Styles stands before Stock, and Stock before Boxes, in the table of input sheets
    ItemId item = new ItemId("Crank", "3/8 OZ", "Red Craw");
    assertEquals(item, season.stock().get(0).item());
    assertEquals(new Place("TRAY-a", "Bow"), season.stock().get(0).place());
    assertEquals("TRAY-a", season.boxes().get(0).name());
    assertEquals(item, season.losses().get(0).item());
    assertEquals("T1", season.losses().get(0).trip());
    assertEquals(List.of("Red Craw"), season.events().get(0).plan().get(0).colours());
    assertEquals("wood", season.events().get(0).cover().orElseThrow());
  }

  /** Hours without the losses of that row would make the style lose less than it does. */
  @Test
  void aLossThatCannotBeUsedStillSaysThatSomethingWasLost() {
    for (String row : List.of("T1|Wrom||Green|2", "T1|Worm||Green|two or so")) {
      Reading reading =
          Reading.of(
              Books.season()
                  .with("Style hours", "Trip|Style|Hours\nT1|Worm|4\nT1|Crank|3")
                  .with("Losses", "Trip|Style|Size|Colour|Lost\nT1|Worm||Green|1\n" + row));
      SeasonHistory history = SeasonHistory.of(reading.season());
      Observation worm =
          history.input(LocalDate.of(2026, 7, 1), OptionalDouble.empty()).observations().stream()
              .filter(use -> use.hours() == 4)
              .findFirst()
              .orElseThrow();
      assertEquals(1, worm.lostPieces(), row);
      assertTrue(worm.atLeast(), row);
      assertTrue(reading.findings().stream().anyMatch(f -> f.code() == Code.LOSS_UNREAD), row);
    }
  }

  @Test
  void anUnknownNameIsSaidWithTheOneProbablyMeant() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Losses", "T1|Wrom||Green|1\nT9|Worm||Green|1")
                .plus("Stock", "Worm||Green|Tary A|1")
                .plus("Boxes", "Tray B|Stren"));
    assertEquals(
        List.of(
            "'Tary A' in Box is not in the sheets Boxes and Compartments;"
                + " did you mean 'Tray A'?",
            "'Stren' in Compartment is not in the sheet Compartments;" + " did you mean 'Stern'?",
            "'Wrom' in Style is not in the sheet Styles; did you mean" + " 'Worm'?",
            "'T9' in Trip is not in the sheet Trips; correct it here, or add it there"),
        reading.findings().stream()
            .filter(f -> f.done().equals("row left out"))
            .map(f -> f.message())
            .toList());
    assertEquals(2, reading.season().losses().stream().mapToInt(Loss::lostPieces).sum());
  }

  /** Left out, the row still tells that the style was thrown there, for hours not known. */
  @Test
  void aSlipInStyleHoursLeavesTheStyleThrown() {
    Season season =
        Reading.of(
                Books.season()
                    .plus("Trips", "T2|2026-03-08|6|1|wood")
                    .plus(
                        "Style hours",
                        "T2|Cranc|2\nT2|Worm|a few\nT2|Nothing like it|1\nT9|Worm|1"))
            .season();
    assertEquals(
        List.of(
            new StyleHours("T2", "Crank", OptionalDouble.empty(), new Cell("Style hours", 4, 2)),
            new StyleHours("T2", "Worm", OptionalDouble.empty(), new Cell("Style hours", 5, 3))),
        season.styleHours().subList(2, 4));
    assertEquals(4, season.styleHours().size());
    assertEquals(
        List.of("Crank 3.0 false", "Worm 5.0 false", "Crank 2.25 true", "Worm 3.75 true"),
        SeasonHistory.of(season).uses().stream()
            .map(
                use ->
                    season.styles().get(use.style()).name()
                        + " "
                        + use.hours()
                        + " "
                        + use.assumed())
            .toList());
  }

  @Test
  void aNameWhoseRowWasLeftOutIsNotCalledUnknown() {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Boxes", "Box|Compartment\nTray A|Nowhere")
                .with("Stock", "Style|Box|Count\nCrank|Tray A|3"));
    assertEquals(
        "'Tray A' in Box is in a row that was left out: Boxes A2; correct that row first",
        reading.only(Code.LEFT_OUT_KEY).message());
  }

  @Test
  void ofTwoEqualDefinitionsTheFirstCounts() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Styles", "CRANK|Spoons|9")
                .plus("Boxes", "tray-a|Stern")
                .plus("Compartments", "bow|1")
                .plus("Trips", "t1|2026-04-01|5")
                .with("Events", "Event|Date|Hours\nCup|2026-08-01|8\nCUP|2026-08-02|9"));
    assertEquals(
        List.of(
            "error Styles A4 DUPLICATE",
            "error Boxes A3 DUPLICATE",
            "error Compartments A5 DUPLICATE",
            "error Trips A3 TRIP_NAME_TAKEN",
            "error Events A3 DUPLICATE"),
        reading.lines());
    Season season = reading.season();
    assertEquals("Hard baits", season.styles().get(0).family());
    assertEquals(8, season.trips().get(0).fishedHours().orElseThrow());
    assertEquals(LocalDate.of(2026, 8, 1), season.events().get(0).date());
    assertEquals(1, season.boxes().size());
    assertEquals(3, season.compartments().size());
  }

  @Test
  void stockMayLieLooseInACompartment() {
    Season season = Reading.of(Books.season()).season();
    assertEquals(new Place("Tray A", "Bow"), season.stock().get(0).place());
    assertEquals(new Place("", "Shelf"), season.stock().get(2).place());
  }

  @Test
  void aShelfAtHomeNeedsNoPlaceInTheBoat() {
    Reading reading =
        Reading.with(
            "Compartments", "Compartment|From transom|Ashore\nBow|150|no\nShelf||yes\nWell||no");
    assertEquals(List.of("error Compartments B4 REQUIRED_BLANK"), reading.lines());
    assertEquals(2, reading.season().compartments().size());
  }

  @Test
  void aTripIsNamedByIdOrDate() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Trips", "|2026-04-01|5\n2026|2026-05-01|6")
                .with(
                    "Style hours",
                    "Trip|Style|Hours\n2026-03-01|Crank|1\n'2026-03-01|Worm|1\n"
                        + "2026-04-01|Crank|2\n'2026/4/1|Worm|2\n2026|Worm|3"));
    assertEquals(List.of(), reading.lines());
    assertEquals(
        List.of("T1", "T1", "2026-04-01", "2026-04-01", "2026"),
        reading.season().styleHours().stream().map(hours -> hours.trip()).toList());
  }

  @Test
  void twoTripsWithoutIdNeedTwoDates() {
    Reading reading = Reading.plus("Trips", "|2026-04-01|5\n|2026-04-01|6");
    assertEquals(List.of("error Trips B4 DUPLICATE"), reading.lines());
    assertEquals(2, reading.season().trips().size());
  }

  @Test
  void aDateOfTwoTripsNamesNeither() {
    Reading reading =
        Reading.of(
            Books.season()
                .plus("Trips", "T2|2026-03-01|5")
                .plus("Losses", "2026-03-01|Worm||Green|1"));
    assertEquals(List.of("error Losses A3 AMBIGUOUS_DATE"), reading.lines());
  }

  @Test
  void whatIsAfterTheDateOfAnalysisIsIgnoredWithANote() {
    Books books =
        Books.season()
            .plus("Trips", "T2|2026-07-01|5")
            .plus("Style hours", "T2|Crank|4")
            .plus("Losses", "T2|Crank|'3/8|Red|3")
            .with(
                "Restocks",
                "Date|Style|Size|Colour|Box|Count\n2026-06-30|Crank|'3/8|Red|Tray A|1\n"
                    + "2026-07-01|Crank|'3/8|Red|Tray A|1");
    Reading reading = Reading.of(books);
    assertEquals(
        List.of(
            "note Trips B3 AFTER_AS_OF",
            "note Style hours A4 AFTER_AS_OF",
            "note Losses A3 AFTER_AS_OF",
            "note Restocks A3 AFTER_AS_OF"),
        reading.lines());
    assertEquals(1, reading.season().trips().size());
    assertEquals(1, reading.season().losses().size());
    assertEquals(1, reading.season().restocks().size());
    assertEquals(2, reading.season().styleHours().size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "0", "0.01", "-2", "long", "#"})
  void aTripWithoutHoursKeepsItsLosses(String hours) {
    Reading reading = Reading.with("Trips", "Trip|Date|Hours\nT1|2026-03-01|" + hours);
    assertEquals(1, reading.findings().size());
    assertEquals("error", reading.findings().get(0).severity().word());
    assertEquals("C2", reading.findings().get(0).at().reference());
    assertTrue(reading.season().trips().get(0).fishedHours().isEmpty());
    assertEquals(1, reading.season().losses().size());
  }
}
