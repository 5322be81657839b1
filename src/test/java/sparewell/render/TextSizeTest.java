package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TextSizeTest {
  // Pillow 9.4.0: ImageFont.truetype("LiberationSans-Regular.ttf", 1000,
  // layout_engine=ImageFont.Layout.BASIC).getlength(text), which does kerning: hence the tolerance.
  @ParameterizedTest
  @CsvSource({
    "Weight 12.5, 5335.72",
    "The quick brown fox, 8948",
    "'MWil.,;()[]%&', 5833",
    "0123456789, 5560",
    "~!@#$^*_+-=/, 6182"
  })
  void widthIsThatOfTheFont(String text, double width) {
    assertEquals(width, TextSize.width(text, 1_000, false), 0.01 * width);
  }

  // The same of LiberationSans-Bold.ttf.
  @ParameterizedTest
  @CsvSource({"Weight 12.5, 5556.72", "The quick brown fox, 9724", "0123456789, 5560"})
  void boldIsNotTakenTooNarrow(String text, double width) {
    assertTrue(TextSize.width(text, 1_000, true) >= 0.997 * width);
  }

  /** U+25A1: 604 in Liberation Sans, 945 of letters a seventh wider in DejaVu Sans. */
  @Test
  void aSquareTakesNoMoreThanInWideFonts() {
    assertEquals(945 * 556 / 636.0, TextSize.width("□", 1_000, false), 30);
  }

  @ParameterizedTest
  @CsvSource({"'', 1", "aa aa, 1", "aa aa aa aa aa, 2", "aaaaaaaaaaaaaaaaaaaa, 3"})
  void linesBreakAtWordsAndInLongOnes(String text, int lines) {
    // Room for 8 letters of 5.56 points.
    assertEquals(lines, TextSize.lines(text, 10, false, 50));
  }

  @Test
  void everyParagraphIsALine() {
    assertEquals(3, TextSize.lines("a\n\nb", 10, false, 50));
  }
}
