package sparewell.workbook.value;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ValuesTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "3/8|0.375|",
        "1 1/2|1.5|",
        "1-1/2|1.5|",
        "3/8 oz|0.375|oz",
        "3/8oz.|0.375|oz.",
        "\u00bd|0.5|",
        "1\u00be oz|1.75|oz",
        "3\u20448|0.375|",
        "12.5|12.5|",
        ".5|0.5|",
        "5.|5|",
        "-3|-3|",
        "\u22123|-3|",
        "1e3|1000|",
        "3,5|3.5|",
        "1,234|1234|",
        "0,375|0.375|",
        "-0,375|-0.375|",
        "0,5|0.5|",
        "1,5|1.5|",
        "1234,5|1234.5|",
        "12.345,678|12345.678|",
        "1,234.5|1234.5|",
        "1.234,5|1234.5|",
        "  7\u00a0lb |7|lb",
        "5\"|5|\"",
        "5'|5|'"
      })
  void readsTypedAmounts(String text, double amount, String word) {
    AmountText read = AmountText.of(text).orElseThrow();
    assertEquals(1, read.terms().size());
    assertEquals(amount, read.terms().get(0).amount(), 1e-12);
    assertEquals(word == null ? "" : word, read.terms().get(0).word());
  }

  @Test
  void readsAmountsInTwoUnits() {
    assertEquals(
        List.of(new AmountText.Term(5, "ft"), new AmountText.Term(3.5, "in")),
        AmountText.of("5 ft 3 1/2 in").orElseThrow().terms());
    assertEquals(
        List.of(new AmountText.Term(1, "lb"), new AmountText.Term(4, "oz")),
        AmountText.of("1 lb 4 oz").orElseThrow().terms());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "abc", "3/0", "1.5.3", "1 2", "3/8/24", "5+", "~5", "12,34,5", "1/2/3", "--3"})
  void refusesWhatIsNoAmount(String text) {
    assertEquals(Optional.empty(), AmountText.of(text));
  }

  /** Apache POI 5.5.1, DataFormatter with the pattern of a spreadsheet's fraction format. */
  @ParameterizedTest
  @ValueSource(doubles = {0.375, 0.5, 1.25, 2.0625, 0.4375, 0.8125, 3.75})
  void showsFractionsLikeASpreadsheet(double number) {
    String shown =
        new DataFormatter(java.util.Locale.US).formatRawCellContents(number, -1, "# ??/??");
    assertEquals(Names.clean(shown), Numbers.fraction(number).orElseThrow());
  }

  @ParameterizedTest
  @CsvSource({
    "5, 5",
    "0.1, 0.1",
    "1e20, 100000000000000000000",
    "-0.0, 0",
    "0.30000000000000004, 0.3"
  })
  void showsNumbersPlainly(double number, String text) {
    assertEquals(text, Numbers.plain(number));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "Green Pumpkin|GREEN  pumpkin",
        "Green Pumpkin|green-pumpkin",
        "Jig, football|Jig (football)",
        "Caf\u00e9|Cafe\u0301",
        "\u00bd oz|1/2 oz",
        "#2|2",
        "Stra\u00dfe|STRASSE",
        "Tray A|\u00a0Tray\u00a0A ",
        "3,5 in|3.5 in"
      })
  void namesFoldAlike(String one, String other) {
    assertEquals(Names.fold(one), Names.fold(other));
  }

  @ParameterizedTest
  @CsvSource({"3/8, 3.8", "1/2, 12", "Red, Rad", "2/0, 20", "5, -"})
  void namesStayApart(String one, String other) {
    assertNotEquals(Names.fold(one), Names.fold(other));
  }

  @Test
  void aNameOfPunctuationAloneIsStillAName() {
    assertEquals("???", Names.fold("???"));
  }

  @Test
  void controlCharactersGoAndOthersStay() {
    assertEquals("Jig head \u2013 \u92fc", Names.clean("Jig\u0007\n head \u2013 \u92fc\u0001"));
    assertTrue(Names.hasControls("a\u0007"));
    assertTrue(!Names.hasControls("a\n\tb"));
  }

  @ParameterizedTest
  @CsvSource({
    "crnak, crank, 1",
    "crankk, crank, 1",
    "shimmerbite, shimmerbait, 2",
    "fog, frog, 1",
    "jgi, jig, 1",
    "tray a, tray b, 1",
    "tray 1, tray 01, 1"
  })
  void slipsAreFound(String typed, String known, int letters) {
    assertEquals(letters, NearMiss.lettersOff(typed, known));
    assertEquals(Optional.of(known), NearMiss.of(typed, List.of("spoon", known)));
  }

  @ParameterizedTest
  @CsvSource({"3/8, 1/8", "tray 1, tray 2", "ab, ac", "cat, dog", "crank, crank", "spoon, spinner"})
  void othersAreNoSlips(String typed, String known) {
    assertEquals(Optional.empty(), NearMiss.of(typed, List.of(known)));
  }

  @Test
  void theNearestOfSeveralIsMeant() {
    assertEquals(
        Optional.of("spinner"), NearMiss.of("spinne", List.of("spinners", "spinner", "spanner")));
  }
}
