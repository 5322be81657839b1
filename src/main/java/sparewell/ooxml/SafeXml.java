package sparewell.ooxml;

import com.fasterxml.aalto.stax.InputFactoryImpl;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.SequenceInputStream;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.util.StreamReaderDelegate;
import org.codehaus.stax2.XMLInputFactory2;

/** XML readers that fetch nothing and refuse document type declarations. */
public final class SafeXml {
  private static final int DEEPEST = 256;
  private static final int HEAD = 1 << 10;

  private SafeXml() {}

  /** A reader over one part; it knows namespaces, and throws at any DOCTYPE. */
  public static XMLStreamReader reader(InputStream in) throws XMLStreamException {
    return reader(text(in));
  }

  static XMLStreamReader reader(Reader text) throws XMLStreamException {
    XMLInputFactory factory = new InputFactoryImpl();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, true);
    factory.setProperty(XMLInputFactory2.P_LAZY_PARSING, false); // faults are thrown by next()
    factory.setXMLResolver(
        (publicId, systemId, base, namespace) -> {
          throw new XMLStreamException("outside reference to " + systemId);
        });
    return new Guarded(factory.createXMLStreamReader(text));
  }

  /** Decoded here, because the JDK's reader prints to the terminal where it cannot decode. */
  private static Reader text(InputStream in) throws XMLStreamException {
    try {
      byte[] head = in.readNBytes(HEAD);
      CharsetDecoder decoder =
          XmlText.charset(head)
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT);
      int mark = byteOrderMark(head);
      InputStream first = new ByteArrayInputStream(head, mark, head.length - mark);
      return new InputStreamReader(new SequenceInputStream(first, in), decoder);
    } catch (IOException e) {
      throw new XMLStreamException(e);
    }
  }

  private static int byteOrderMark(byte[] head) {
    String latin = new String(head, 0, Math.min(3, head.length), StandardCharsets.ISO_8859_1);
    if (latin.equals("\u00ef\u00bb\u00bf")) {
      return 3;
    }
    return latin.startsWith("\u00fe\u00ff") || latin.startsWith("\u00ff\u00fe") ? 2 : 0;
  }

  /** Reads to the end; throws where the XML is damaged. */
  public static void checkWellFormed(InputStream in) throws XMLStreamException {
    XMLStreamReader reader = reader(in);
    while (reader.hasNext()) {
      reader.next();
    }
    reader.close();
  }

  private static final class Guarded extends StreamReaderDelegate {
    private int depth;

    Guarded(XMLStreamReader reader) {
      super(reader);
    }

    @Override
    public int next() throws XMLStreamException {
      int event;
      try {
        event = super.next();
      } catch (RuntimeException e) { // the JDK's reader lets some slip on damaged input
        throw new XMLStreamException("damaged XML", e);
      }
      if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
        throw new XMLStreamException(
            "a document type declaration or entity, which workbooks never have");
      }
      if (event == XMLStreamConstants.START_ELEMENT && ++depth > DEEPEST) {
        throw new XMLStreamException("elements nested too deeply");
      }
      if (event == XMLStreamConstants.END_ELEMENT) {
        depth--;
      }
      return event;
    }

    @Override
    public String getElementText() throws XMLStreamException {
      String text = super.getElementText();
      depth--; // it went past the end of the element without next()
      return text;
    }
  }
}
