package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.season.SeasonMaker;

/** Losses that are asked about as slips of the pen, and the cells they are asked at. */
class SlipFinderTest {
  private static final int TRIPS = 40;

  /** Forty trips of eight hours: a piece lost on every second one. */
  private static SeasonMaker quiet() {
    SeasonMaker book =
        new SeasonMaker().style("Shad", "Soft", "red", "blue").style("Craw", "Soft", "brown");
    for (int t = 0; t < TRIPS; t++) {
      book.trip("T" + t, t, 16, "").thrown("T" + t, "Shad", 8).thrown("T" + t, "Craw", 8);
      book.lost("T" + t, "Shad", "red", t % 2).lost("T" + t, "Craw", "brown", (t + 1) % 2);
    }
    return book;
  }

  private static List<Finding> asked(SeasonMaker book) {
    return LossModel.fit(book.season()).findings().stream()
        .filter(finding -> finding.code() == Code.LOSS_FAR_OUT)
        .toList();
  }

  private static List<Integer> rows(SeasonMaker book) {
    return asked(book).stream().map(finding -> finding.at().row()).toList();
  }

  @Test
  void theLargestRowOfTheTripAndStyleIsAskedAbout() {
    SeasonMaker book = quiet();
    book.trip("Long", TRIPS, 10, 100, "").thrown("Long", "Craw", 100);
    book.lost("Long", "Craw", "brown", 50).lost("T7", "Shad", "blue", 3);
    int row = book.losses.size() + 2;
    book.lost("T7", "Shad", "red", 40).lost("T7", "Craw", "brown", 2);
    assertEquals(List.of(row), rows(book));
    Finding finding = asked(book).get(0);
    assertTrue(finding.message().contains("44"), finding.message());
    assertTrue(finding.message().contains("8.0"), finding.message());
  }

  @Test
  void fewerThanEightPiecesAreNoQuestion() {
    for (int pieces : new int[] {6, 7, 8, 9}) {
      SeasonMaker book = quiet();
      book.losses.removeIf(loss -> loss.trip().equals("T7"));
      int row = book.losses.size() + 2;
      book.lost("T7", "Shad", "red", pieces);
      assertEquals(pieces < 8 ? List.of() : List.of(row), rows(book), pieces + " pieces");
    }
  }

  /** Each costs a fit; the others are asked about once these are mended. */
  @Test
  void theThreeLargestAreJudged() {
    SeasonMaker book = quiet();
    for (String style : List.of("A", "B", "C", "D")) {
      book.style(style, "Soft", "red");
      for (int t = 0; t < TRIPS; t++) {
        book.thrown("T" + t, style, 8).lost("T" + t, style, "red", t % 2);
      }
    }
    int row = book.losses.size() + 2;
    book.lost("T7", "A", "red", 24).lost("T12", "B", "red", 28);
    book.lost("T21", "C", "red", 32).lost("T30", "D", "red", 36);
    assertEquals(List.of(row + 3, row + 2, row + 1), rows(book));
  }
}
