package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.season.Season;
import sparewell.season.SeasonOrder;
import sparewell.stock.OnHandCalculator;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

class WhereItIsSheetTest {
  private static final ReportSheet SHEET =
      of(
          Books.season()
              .plus("Boxes", "Empty box|Bow|1")
              .plus("Stock", "Crank|'3/8|Blue|Tray A|0|2026-01-01"));

  private static ReportSheet of(Books books) {
    Season season = SeasonOrder.of(Reading.of(books).season());
    return WhereItIsSheet.of(OnHandCalculator.of(season), season);
  }

  /** The first cell of each page. */
  private static List<String> pages(ReportSheet sheet) {
    List<String> pages = new ArrayList<>();
    List<Block> blocks = sheet.blocks();
    for (int i = 0; i < blocks.size(); i++) {
      if (blocks.get(i) instanceof Block.NewPage) {
        pages.add(((Block.Text) blocks.get(i + 1)).lines().get(0).text());
        assertTrue(blocks.get(i + 2) instanceof Block.Rows);
      }
    }
    return pages;
  }

  /** From the bow aft, then ashore. */
  @Test
  void eachBoxHasAPageInTheOrderInWhichTheyStand() {
    StringBuilder stock = new StringBuilder();
    for (String box : List.of("Aft 1", "Aft 2", "Aft 3", "Fore", "Home")) {
      for (int n = 0; n < 9; n++) {
        stock.append("Lure|C").append(n).append('|').append(box).append("|1\n");
      }
    }
    ReportSheet sheet =
        of(
            Books.empty()
                .with("Styles", "Style|Family\nLure|Lures")
                .with(
                    "Boxes",
                    "Box|Compartment\nAft 1|Aft\nAft 2|Aft\nAft 3|Aft\nFore|Well\nHome|Attic")
                .with(
                    "Compartments",
                    "Compartment|From transom|Ashore\nAft|20|\nAttic|0|yes\nWell|90|")
                .with("Trips", "Trip|Date|Hours")
                .with("Losses", "Trip|Style|Lost")
                .with("Stock", "Style|Colour|Box|Count\n" + stock.toString().strip()));
    assertEquals(
        List.of(
            "Fore, in Well", "Aft 1, in Aft", "Aft 2, in Aft", "Aft 3, in Aft", "Home, in Attic"),
        pages(sheet));
  }

  /** A place whose last piece is thought lost may hold one all the same: it is to be counted. */
  @Test
  void aBoxOfWhichNothingIsLeftIsCountedToo() {
    ReportSheet sheet =
        of(
            Books.season()
                .plus("Boxes", "Emptied|Bow|1")
                .plus("Stock", "Crank|'3/8|Blue|Emptied|0|2026-01-01"));
    assertTrue(
        sheet.blocks().stream()
            .filter(Block.Text.class::isInstance)
            .map(block -> ((Block.Text) block).lines().get(0).text())
            .anyMatch("Emptied, in Bow"::equals));
  }

  private static List<Table<?>> tables() {
    List<Table<?>> tables = new ArrayList<>();
    for (Block block : SHEET.blocks()) {
      if (block instanceof Block.Rows rows) {
        tables.add(rows.table());
      }
    }
    return tables;
  }

  @Test
  void everyPlaceThatHoldsSomethingHasATableToCountItOnAndEachCompartmentItsPages() {
    assertEquals(List.of("Tray A, in Bow", "Loose in Shelf"), pages(SHEET));
    assertEquals(List.of(4, 3, 1), tables().stream().map(table -> table.rows().size()).toList());
  }

  @Test
  void aPageNamesItsItemsExactlyAndHasACellToTypeTheCountInto() {
    for (Table<?> table : tables().subList(1, 3)) {
      List<String> headings = table.columns().stream().map(Column::heading).toList();
      assertTrue(
          headings.containsAll(
              List.of("Style", "Size", "Colour", "Box", "Compartment", "Counted")));
      assertTrue(hasEntry(table), "a cell to type into");
    }
  }

  private static <R> boolean hasEntry(Table<R> table) {
    Column<R> counted =
        table.columns().stream()
            .filter(c -> c.heading().equals("Counted"))
            .findFirst()
            .orElseThrow();
    return table.rows().stream().allMatch(row -> counted.entry().apply(row).isPresent());
  }
}
