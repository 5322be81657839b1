package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;

/** Findings of a kind in one line, and errors before what follows from them. */
class FoldedTest {
  private static Finding leftOut(String sheet, int row, String key, Cell cause) {
    return Finding.of(
        Code.LEFT_OUT_KEY, new Cell(sheet, row, 4), key, "Box", "row left out", cause);
  }

  private static Finding blank(String sheet, int row) {
    return Finding.of(Code.REQUIRED_BLANK, new Cell(sheet, row, 2), "Compartment", "row left out");
  }

  @Test
  void warningsOfAKindShareALineThatNamesTheirCells() {
    List<Finding> findings = new ArrayList<>();
    for (int row = 2; row <= 6; row++) {
      findings.add(
          Finding.of(Code.STYLE_WITHOUT_WEIGHT, new Cell("Styles", row, 3), "s" + row, "" + row));
    }
    for (int row = 2; row <= 7; row++) {
      findings.add(Finding.of(Code.BOX_SIZE_UNKNOWN, new Cell("Boxes", row, 3), "Box " + row));
    }
    findings.add(Finding.of(Code.RECOUNT, new Cell("Stock", 3, 5), "Jig", "2"));
    List<Folded> folded = Folded.of(findings);
    assertEquals(3, folded.size());
    assertEquals("6 boxes lack sizes (C2, C3, C4, C5, C6, C7)", folded.get(1).messageWithCells());
    assertEquals("5 styles with stock aboard have no Weight each", folded.get(0).message());
    assertEquals(
        "5 styles with stock aboard have no Weight each (C2, C3, C4, C5, C6)",
        folded.get(0).messageWithCells());
    assertEquals(findings.get(11).message(), folded.get(2).messageWithCells());
    assertEquals(2, Folded.of(findings.subList(0, 2)).size(), "two are told one by one");
  }

  @Test
  void theErrorThatMostRowsWaitForComesFirst() {
    Finding locker = blank("Compartments", 4);
    Finding count = blank("Stock", 9);
    List<Finding> findings = new ArrayList<>(List.of(count));
    for (int row = 2; row <= 6; row++) {
      findings.add(leftOut("Stock", row, "J1", new Cell("Boxes", 4, 1)));
    }
    Finding box = leftOut("Boxes", 4, "Bow", new Cell("Compartments", 4, 1));
    findings.add(box);
    findings.add(locker);
    List<Finding> ordered = Causes.first(findings);
    assertEquals(List.of(locker, count, box), ordered.subList(0, 3));
    List<Folded> folded = Folded.of(ordered);
    assertEquals(4, folded.size());
    assertEquals(
        "5 rows wait for one that was left out: Boxes row 4; correct that row first"
            + " (D2, D3, D4, D5, D6)",
        folded.get(3).messageWithCells());
  }
}
