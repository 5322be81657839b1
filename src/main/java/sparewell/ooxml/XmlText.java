package sparewell.ooxml;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;

/**
 * A small XML part as text with the place of every element, for edits by cutting and inserting that
 * keep all other bytes.
 */
public final class XmlText {
  private static final Pattern DECLARED =
      Pattern.compile("^<\\?xml[^>]*?encoding\\s*=\\s*[\"']([A-Za-z0-9._-]+)[\"']");

  private final String text;
  private final Charset charset;
  private final XmlElement root;

  private XmlText(String text, Charset charset, XmlElement root) {
    this.text = text;
    this.charset = charset;
    this.root = root;
  }

  /** Reads a part; throws where it is damaged, has a DOCTYPE, or cannot be kept to the byte. */
  public static XmlText parse(byte[] bytes) throws XMLStreamException {
    Charset charset = charset(bytes);
    String text = decode(bytes, charset);
    boolean exact = charset == StandardCharsets.UTF_8; // one text for each sequence of bytes
    if (!exact && !Arrays.equals(bytes, encode(text, charset))) {
      throw new XMLStreamException("text in a mixed encoding");
    }
    return new XmlText(text, charset, new XmlScanner(text).root());
  }

  public XmlElement root() {
    return root;
  }

  public String text() {
    return text;
  }

  public String text(XmlElement element) {
    return text.substring(element.start(), element.end());
  }

  /** The bytes of another text in this one's encoding. */
  public byte[] encode(String edited) {
    return encode(edited, charset);
  }

  static Charset charset(byte[] bytes) throws XMLStreamException {
    int first = bytes.length > 0 ? bytes[0] & 0xff : 0;
    int second = bytes.length > 1 ? bytes[1] & 0xff : 0;
    if (first == 0xfe && second == 0xff || first == 0 && second == '<') {
      return StandardCharsets.UTF_16BE;
    }
    if (first == 0xff && second == 0xfe || first == '<' && second == 0) {
      return StandardCharsets.UTF_16LE;
    }
    String head =
        new String(bytes, 0, Math.min(bytes.length, 200), StandardCharsets.ISO_8859_1)
            .replaceFirst("^\u00ef\u00bb\u00bf", "");
    Matcher declared = DECLARED.matcher(head);
    try {
      return declared.find() ? Charset.forName(declared.group(1)) : StandardCharsets.UTF_8;
    } catch (IllegalArgumentException e) {
      throw new XMLStreamException("unknown encoding " + declared.group(1), e);
    }
  }

  static String decode(byte[] bytes, Charset charset) throws XMLStreamException {
    try {
      CharBuffer characters =
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes));
      return characters.toString();
    } catch (CharacterCodingException e) {
      throw new XMLStreamException("text that is not " + charset, e);
    }
  }

  /** Characters that the encoding lacks become numeric references. */
  static byte[] encode(String text, Charset charset) {
    if (charset.newEncoder().canEncode(text)) {
      return text.getBytes(charset);
    }
    StringBuilder safe = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              String character = Character.toString(c);
              boolean known = charset.newEncoder().canEncode(character);
              safe.append(known ? character : "&#" + c + ";");
            });
    return safe.toString().getBytes(charset);
  }

  /** A text as it may stand between tags or quotation marks. */
  public static String escaped(String text) {
    StringBuilder out = new StringBuilder();
    escape(text, out);
    return out.toString();
  }

  /** Adds a text as it may stand between tags or quotation marks. */
  public static void escape(String text, StringBuilder out) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        case '\n', '\r', '\t' -> out.append("&#").append((int) c).append(';');
        default -> {
          if (Character.isHighSurrogate(c)
              && i + 1 < text.length()
              && Character.isLowSurrogate(text.charAt(i + 1))) {
            out.append(c).append(text.charAt(++i));
          } else {
            boolean allowed = c >= ' ' && !Character.isSurrogate(c) && c < '\uFFFE';
            out.append(allowed ? c : '\uFFFD');
          }
        }
      }
    }
  }
}
