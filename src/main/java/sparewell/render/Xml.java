package sparewell.render;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;

/**
 * Writes XML in order. A tag is given as it reads, name and attributes, with apostrophes for
 * quotation marks and {@code {}} for each value, which is escaped: {@code row r='{}' ht='{}'}. A
 * boolean value is written as 1 or 0.
 */
final class Xml {
  static final String SHEET = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  static final String RELATIONS =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  static final String DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/main";
  static final String SHEET_DRAWING =
      "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
  static final String CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";

  private static final int CHUNK = 1 << 13;

  private final OutputStream done;
  private final StringBuilder out =
      new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n");
  private final Deque<String> open = new ArrayDeque<>();

  /** Writes to a stream, which stays open. */
  Xml(OutputStream done) {
    this.done = done;
  }

  /** Elements without a document around them, as text. */
  static String fragment(Consumer<Xml> elements) {
    Xml xml = new Xml(OutputStream.nullOutputStream());
    xml.out.setLength(0);
    elements.accept(xml);
    return xml.out.toString();
  }

  Xml open(String tag, Object... values) {
    start(tag, values);
    out.append('>');
    int blank = tag.indexOf(' ');
    open.push(blank < 0 ? tag : tag.substring(0, blank));
    return this;
  }

  /** An element without content. */
  Xml leaf(String tag, Object... values) {
    start(tag, values);
    out.append("/>");
    return this;
  }

  Xml leafText(String tag, Object text, Object... values) {
    return open(tag, values).text(text.toString()).close();
  }

  /** Text inside the open element. */
  Xml text(String text) {
    escape(text, false);
    return this;
  }

  Xml close() {
    out.append("</").append(open.pop()).append('>');
    if (out.length() > CHUNK) {
      pass();
    }
    return this;
  }

  Xml close(int times) {
    for (int i = 0; i < times; i++) {
      close();
    }
    return this;
  }

  /** Writes a document whole; every element must be closed. */
  void document(Consumer<Xml> elements) {
    elements.accept(this);
    if (!open.isEmpty()) {
      throw new IllegalStateException("still open: " + open);
    }
    pass();
  }

  private void pass() {
    try {
      done.write(out.toString().getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    out.setLength(0);
  }

  private void start(String tag, Object... values) {
    out.append('<');
    int from = 0;
    for (Object value : values) {
      int place = tag.indexOf("{}", from);
      quoted(tag, from, place);
      escape(value instanceof Boolean yes ? yes ? "1" : "0" : value.toString(), true);
      from = place + 2;
    }
    quoted(tag, from, tag.length());
  }

  private void quoted(String tag, int from, int to) {
    for (int i = from; i < to; i++) {
      out.append(tag.charAt(i) == '\'' ? '"' : tag.charAt(i));
    }
  }

  private void escape(String text, boolean attribute) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append(attribute ? "&quot;" : "\"");
        case '\n', '\t' -> {
          if (attribute) {
            out.append("&#").append((int) c).append(';');
          } else {
            out.append(c);
          }
        }
        default -> {
          if (Character.isHighSurrogate(c)
              && i + 1 < text.length()
              && Character.isLowSurrogate(text.charAt(i + 1))) {
            out.append(c).append(text.charAt(++i));
          } else {
            out.append(allowed(c) ? c : '\uFFFD');
          }
        }
      }
    }
  }

  /** Returns whether XML 1.0 may hold the character. */
  private static boolean allowed(char c) {
    return c >= ' ' && !Character.isSurrogate(c) && c < '\uFFFE';
  }
}
