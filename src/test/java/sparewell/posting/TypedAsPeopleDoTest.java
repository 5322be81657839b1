package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.AnalysedDemo;
import sparewell.Command;
import sparewell.Ticking;
import sparewell.season.Season;
import sparewell.sheet.EntryTable;
import sparewell.sheet.Typed;
import sparewell.workbook.Books;
import sparewell.workbook.read.Reading;

/** Entries in a Done cell are read as people mean them, or told with their cell. */
class TypedAsPeopleDoTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 15);

  private static final Season SEASON =
      Reading.of(
              Books.empty()
                  .with("Styles", "Style|Family\nLure|Lures")
                  .with("Boxes", "Box|Compartment\nAlpha|Bow\nShelf box|Shelf")
                  .with("Compartments", "Compartment|From transom|Ashore\nBow|150|\nShelf|0|yes")
                  .with("Settings", "Setting|Value\nAs of|" + DAY)
                  .with("Trips", "Trip|Date|Hours")
                  .with("Losses", "Trip|Style|Lost")
                  .with("Stock", "Style|Box|Count|Counted on\nLure|Shelf box|20|2026-03-01"))
          .season();

  private static Posting posting(EntryTable table, Map<String, Object> shown, Object done) {
    Map<String, Object> cells = new LinkedHashMap<>(shown);
    cells.put("Done", done);
    Typed.Row row =
        new Typed.Row(
            table,
            List.of("Lure"),
            0,
            cells,
            Map.of("Done", done),
            new sparewell.finding.Cell("Sheet", 9, 7));
    return Poster.of(
        new Typed(List.of(row), Map.of(), List.of(), List.of(), Map.of()), SEASON, DAY);
  }

  private static Posting brought(Object done) {
    Map<String, Object> line =
        Map.of("Style", "Lure", "From", "Shelf box", "Into", "Alpha", "Pieces", 8.0);
    return posting(EntryTable.BRING, line, done);
  }

  @Test
  void aTickWithoutAPlaceIsToldWithItsCellAndWhatToType() {
    Map<String, Object> line =
        Map.of("Style", "Lure", "From box", "Alpha", "Into", EntryTable.OF_CHOICE, "Pieces", 2.0);
    Posting posting = posting(EntryTable.PACK, line, "yes");
    assertEquals(List.of(), posting.rows(), "all or nothing");
    assertEquals(
        List.of(
            "Sheet G9 (Lure): type the name of the box or compartment they went into in the same"
                + " row, under Into, or delete the tick."),
        posting.faults());
  }

  // 8 pieces are to be brought.
  @ParameterizedTest
  @CsvSource(
      ignoreLeadingAndTrailingWhitespace = false,
      textBlock =
          """
          Yes ,8
          YES,8
          y,8
          Done,8
          done.,8
          ok,8
          \u2713,8
          \u2714\ufe0f,8
          X,8
          true,8
          all,8
          2 of 8,2
          2/8,2
          3 pcs,3
          3 pieces.,3
          3,3
          \uff13,3
          \u00a03\u00a0,3
          8 of 8,8
          0,0
          0 of 8,0
          no,0
          -,0""")
  void isReadAsItIsMeant(String typed, int pieces) {
    List<Object> ways = new ArrayList<>(List.of(typed));
    if (typed.matches("\\d")) {
      ways.add(Double.valueOf(typed));
    }
    for (Object way : ways) {
      Posting posting = brought(way);
      assertEquals(List.of(), posting.faults());
      assertEquals(
          pieces == 0 ? List.of() : List.of(String.valueOf(pieces)),
          posting.rows().stream().map(row -> row.values().get("Count")).toList());
    }
    assertEquals("8", brought(true).rows().get(0).values().get("Count"));
  }

  @ParameterizedTest
  @CsvSource({
    "-2, neither yes nor a whole number",
    "2.5, neither yes nor a whole number",
    "half, neither yes nor a whole number",
    "2 of 9, does not fit the 8 pieces asked for",
    "3 packs, does not fit the 8 pieces asked for",
    "9, is more than the 8 asked for",
    "2?, neither yes nor a whole number",
    "#DIV/0!, neither yes nor a whole number"
  })
  void isToldWithItsCell(String typed, String what) {
    Posting posting = brought(typed);
    assertEquals(List.of(), posting.rows());
    assertEquals(1, posting.faults().size());
    assertTrue(posting.faults().get(0).startsWith("Sheet G9 (Lure): '") || typed.equals("9"));
    assertTrue(posting.faults().get(0).contains(what), posting.faults().get(0));
    assertTrue(
        brought(DAY).faults().get(0).contains("'2026-03-15' is neither yes"), "a date is no count");
  }

  @Test
  void packsAreBoughtWholeAndCountedInPieces() {
    Map<String, Object> line =
        Map.of("Style", "Lure", "Into", "Alpha", "Packs", 2.0, "Pieces", 20.0, "Cost", 9.98);
    Posting posting = posting(EntryTable.BUY, line, "1 pack");
    assertEquals("10", posting.rows().get(0).values().get("Count"));
    assertEquals("4.99", posting.rows().get(0).values().get("Cost"));
    assertTrue(
        posting(EntryTable.BUY, line, "10 pieces").faults().get(0).contains("the 2 packs asked"));
    Map<String, Object> singly =
        Map.of("Style", "Lure", "Into", "Alpha", "Packs", 2.0, "Pieces", 2.0, "Cost", 9.98);
    assertEquals(List.of(), posting(EntryTable.BUY, singly, "2 pcs").faults());
    Map<String, Object> unread =
        Map.of("Style", "Lure", "Into", "Alpha", "Packs", "some", "Pieces", 20.0);
    assertTrue(
        posting(EntryTable.BUY, unread, "yes")
            .faults()
            .get(0)
            .contains("cannot be read under Packs"));
  }

  @ParameterizedTest
  @CsvSource({"1, true", "yes, true", "Done, true", "0, false", "no, false", "2,", "0.5,"})
  void whatIsDoneOrNotTakesOneForYes(String typed, Boolean moved) {
    Map<String, Object> line = Map.of("Box", "Alpha", "From", "Bow", "To", "Shelf");
    Posting posting = posting(EntryTable.MOVE, line, typed);
    assertEquals(moved == null, !posting.faults().isEmpty());
    assertEquals(moved != null && moved, !posting.rows().isEmpty());
  }

  /** As spreadsheet programs hold it: formulas with values, 2/3 made a date, an error. */
  @Test
  void cellsOfOtherKindsCountAsWhatTheyShow(@TempDir Path folder) throws Exception {
    Path book = AnalysedDemo.copy(folder);
    Ticking.edit(book, open -> Ticking.type(open, "Buy list", "Done", line -> "yes"));
    List<Cell> done = new ArrayList<>();
    try (XSSFWorkbook open = new XSSFWorkbook(Files.newInputStream(book))) {
      for (Row row : open.getSheet("Buy list")) {
        for (Cell cell : row) {
          if (cell.toString().equals("yes") && done.size() < 8 && cell.getColumnIndex() == 12) {
            done.add(cell);
          }
        }
      }
      for (Cell cell : done) {
        cell.setBlank();
      }
      done.get(0).setCellFormula("2-1");
      done.get(1).setCellValue(true);
      done.get(2).setCellFormula("1/0");
      var day = open.createCellStyle();
      day.setDataFormat((short) 14);
      done.get(3).setCellValue(46056);
      done.get(3).setCellStyle(day);
      open.getCreationHelper().createFormulaEvaluator().evaluateAll();
      try (var out = Files.newOutputStream(book)) {
        open.write(out);
      }
    }
    Command run = Command.run("post", book, "--dry-run", "--reports", folder);
    String told = run.error().replaceAll("\\s+", " ");
    assertEquals(3, run.exitCode(), run.out());
    assertTrue(told.contains("Buy list " + done.get(2).getAddress()), told);
    assertTrue(told.contains("'#DIV/0!' is neither yes"), told);
    assertTrue(told.contains("Buy list " + done.get(3).getAddress()), told);
    assertTrue(told.contains("'2026-02-03' is neither yes"), told);
    assertEquals(2, told.split(" is neither yes").length - 1, told);
  }
}
