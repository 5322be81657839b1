package sparewell.ooxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import org.junit.jupiter.api.Test;

class XmlTextTest {
  @Test
  void attributesAreFoundHoweverTheyAreWritten() throws XMLStreamException {
    String text =
        "<?xml version='1.0'?><!-- <no a='1'> --><x:a xmlns:x='u'\n  b = \"it's > ![CDATA[\""
            + "\t\tx:c='say \"=/\"'><d e=''/><d\n/></x:a >";
    XmlText xml = XmlText.parse(text.getBytes(StandardCharsets.UTF_8));
    List<String> shown =
        xml.root().attributes().stream().map(a -> text.substring(a.start(), a.end())).toList();
    assertEquals(List.of("xmlns:x='u'", "b = \"it's > ![CDATA[\"", "x:c='say \"=/\"'"), shown);
    assertEquals("it's > ![CDATA[", xml.root().value("b").orElseThrow());
    List<String> inside = xml.root().children().stream().map(xml::text).toList();
    assertEquals(List.of("<d e=''/>", "<d\n/>"), inside);
    assertEquals(text.length(), xml.root().end());
  }

  @Test
  void textThatIsNoUtf8IsRefused() {
    byte[] overlong = {'<', 'a', '>', (byte) 0xc0, (byte) 0xaf, '<', '/', 'a', '>'};
    assertThrows(XMLStreamException.class, () -> XmlText.parse(overlong));
    byte[] surrogate = {'<', 'a', '>', (byte) 0xed, (byte) 0xa0, (byte) 0x80, '<', '/', 'a', '>'};
    assertThrows(XMLStreamException.class, () -> XmlText.parse(surrogate));
  }
}
