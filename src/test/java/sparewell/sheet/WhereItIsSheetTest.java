package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.stock.OnHandCalculator;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

class WhereItIsSheetTest {
  private static final ReportSheet SHEET =
      WhereItIsSheet.of(
          OnHandCalculator.of(
              Reading.of(
                      Books.season()
                          .plus("Boxes", "Empty box|Bow|1")
                          .plus("Stock", "Crank|'3/8|Blue|Tray A|0|2026-01-01"))
                  .season()));

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
    List<Block> blocks = SHEET.blocks();
    List<String> pages = new ArrayList<>();
    for (int i = 0; i < blocks.size(); i++) {
      if (blocks.get(i) instanceof Block.NewPage) {
        pages.add(((Block.Text) blocks.get(i + 1)).lines().get(0).text());
        assertTrue(blocks.get(i + 2) instanceof Block.Rows);
      }
    }
    assertEquals(List.of("Tray A, in Bow", "Loose in Shelf"), pages);
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
