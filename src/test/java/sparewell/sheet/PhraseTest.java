package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import sparewell.spares.Outlook;

class PhraseTest {
  @Test
  void aChangeOfAChanceHasDecimalsOnlyWhereTheyTellIt() {
    assertEquals("from 53 to 91 %", Phrase.fromTo(0.528, 0.913));
    assertEquals("from 53.1 to 53.4 %", Phrase.fromTo(0.531, 0.534));
    assertEquals("from 96.4 to 97.1 %", Phrase.fromTo(0.964, 0.971));
    assertEquals("from under 1 to over 99 %", Phrase.fromTo(0.001, 0.998));
    assertEquals("from 98 to over 99.9 %", Phrase.fromTo(0.98, 0.9999));
  }

  /** Words for packs of two and for pieces sold singly. */
  private static String wares(int packs, int single) {
    return BuyWords.wares(
        List.of(2, 1), two -> two == 2 ? packs : single, each -> each == 2 ? 2 * packs : single);
  }

  @Test
  void packsAndSinglePiecesAreTold() {
    assertEquals("5 packs and 1 piece", wares(5, 1));
    assertEquals("2 pieces", wares(0, 2));
  }

  @Test
  void importantIsSaidAsItIsCounted() {
    OptionalDouble none = OptionalDouble.empty();
    assertEquals(
        "2 items in use with an importance of 1 or more",
        Phrase.important(new Outlook(2, true, none, none, none)));
    assertEquals(
        "1 item in use with an importance above 0",
        Phrase.important(new Outlook(1, false, none, none, none)));
  }

  @Test
  void oneMinuteIsOne() {
    assertEquals("1 minute", StowWords.minutes(1.2));
    assertEquals("0 minutes", StowWords.minutes(0.2));
  }
}
