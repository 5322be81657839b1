package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sparewell.finding.Cell;
import sparewell.season.Season;
import sparewell.sheet.EntryTable;
import sparewell.sheet.Typed;
import sparewell.stock.OnHandCalculator;
import sparewell.workbook.Books;
import sparewell.workbook.InputSheets;
import sparewell.workbook.read.Reading;

/**
 * A box is carried ashore in the evening of a trip and posted with it: what was lost that day was
 * lost out of it all the same, though a box moved on a day counts as moved on all of it.
 */
class MovedBoxPostTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 15);

  private static Books book() {
    return Books.empty()
        .with("Styles", "Style|Family\nLure|Lures")
        .with("Boxes", "Box|Compartment\nAlpha|Bow\nBeta|Bow")
        .with("Compartments", "Compartment|From transom|Ashore\nBow|150|\nShelf|0|yes")
        .with("Settings", "Setting|Value\nAs of|" + DAY)
        .with("Trips", "Trip|Date|Hours")
        .with("Losses", "Trip|Style|Lost")
        .with(
            "Stock", "Style|Box|Count|Counted on\nLure|Alpha|6|2026-03-01\nLure|Beta|4|2026-03-01");
  }

  private static Typed.Row row(EntryTable table, Map<String, Object> shown, String heading) {
    return new Typed.Row(
        table,
        List.of("Lure", "", ""),
        0,
        shown,
        Map.of(heading, shown.get(heading)),
        new Cell("Sheet", 5, 5));
  }

  @Test
  void aLossOfThatDayComesOffTheBoxAsItStoodThen() {
    Season before = Reading.of(book()).season();
    Typed typed =
        new Typed(
            List.of(
                row(
                    EntryTable.MOVE,
                    Map.of("Box", "Alpha", "From", "Bow", "To", "Shelf", "Done", "yes"),
                    "Done"),
                row(EntryTable.CARD_ITEMS, Map.of("Style", "Lure", "Lost", 2.0), "Lost")),
            Map.of("Trip", "Outing", "Date", DAY, "Hours fished", 6.0),
            List.of(),
            List.of(),
            Map.of());
    Posting posting = Poster.of(typed, before, DAY);
    assertEquals(List.of(), posting.faults());
    Books after =
        book()
            .with("Trips", "Trip|Date|Hours\nOuting|" + DAY + "|6")
            .with("Losses", "Trip|Style|Lost\nOuting|Lure|2")
            .with("Box log", "Date|Box|Compartment\n" + DAY + "|Alpha|Shelf")
            .with("Counts", "Date|Style|Box|Count");
    posting
        .of(InputSheets.COUNTS)
        .forEach(
            count ->
                after.plus(
                    "Counts",
                    String.join(
                        "|",
                        count.values().get("Date"),
                        "Lure",
                        count.values().get("Box"),
                        count.values().get("Count"))));
    Map<String, Integer> pieces = new TreeMap<>();
    OnHandCalculator.of(Reading.of(after).season())
        .holdings()
        .forEach(one -> pieces.put(one.place().box(), one.pieces()));
    assertEquals(Map.of("Alpha", 6 - 2, "Beta", 4), pieces);
  }
}
