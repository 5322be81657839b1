package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.ooxml.XmlText;
import sparewell.ooxml.Zips;

class NormalFontTest {
  // 7 pixels for Calibri 11: ECMA-376 part 1, section 18.3.1.13, its example; the others from
  // memory
  @ParameterizedTest
  @CsvSource({"Calibri, 11, 7", "Arial, 10, 7", "Verdana, 10, 8", "Times New Roman, 12, 8"})
  void pixelsOfADigit(String name, String size, long pixels) throws Exception {
    XmlText styles =
        XmlText.parse(
            Zips.utf8(
                "<styleSheet><fonts><font><sz val=\"40\"/></font><font><sz val=\""
                    + size
                    + "\"/><name val=\""
                    + name
                    + "\"/></font></fonts><cellStyleXfs><xf fontId=\"1\"/></cellStyleXfs></styleSheet>"));
    assertEquals(pixels, NormalFont.digitPixels(styles.root()));
  }
}
