package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class MarkupTest {
  private static String copy(String part) throws IOException {
    Markup in = new Markup(new StringReader(part));
    StringWriter out = new StringWriter();
    while (in.next(out)) {
      out.append(in.tag());
    }
    return out.toString();
  }

  @Test
  void copiesAnyPartWhereverTheBufferEnds() throws IOException {
    String cell = "<c r=\"A1\" t=\"inlineStr\"><is><t>2 &lt; 3 \u00e4 \ud83d\udc1f</t></is></c>";
    for (int before = 8_192 - cell.length(); before <= 8_192; before++) {
      String part = "<row>" + "x".repeat(before) + cell + "</row>\n";
      assertEquals(part, copy(part));
    }
  }

  @Test
  void angleInQuotesEndsNoTag() throws IOException {
    Markup in = new Markup(new StringReader("<f a=\"x>y\" b=\"\">1</f>"));
    assertTrue(in.next(new StringWriter()));
    assertEquals("x>y", in.value("a"));
    assertEquals("", in.value("b"));
    assertNull(in.value("c"));
  }

  @Test
  void elementsAreToldApartByTheirWholeName() throws IOException {
    Markup in = new Markup(new StringReader("<col min=\"1\"/><c><cols/></c>"));
    in.next(new StringWriter());
    assertTrue(in.opens("col"));
    assertFalse(in.opens("c"));
    in.next(new StringWriter());
    assertTrue(in.opens("c"));
    in.next(new StringWriter());
    assertTrue(in.opens("cols"));
    assertFalse(in.opens("col"));
    in.next(new StringWriter());
    assertFalse(in.opens("c"));
  }

  @Test
  void attributesAreReplacedAndTakenOut() throws IOException {
    Markup in = new Markup(new StringReader("<c r=\"B2\" s=\"3\" t=\"s\"/>"));
    in.next(new StringWriter());
    in.replace("s", "114");
    in.replace("t", null);
    assertEquals("<c r=\"B2\" s=\"114\"/>", in.tag().toString());
  }

  @Test
  void partThatEndsWithinATagIsNoPart() {
    assertThrows(IOException.class, () -> copy("<row><c r=\"A1"));
  }
}
