package sparewell.render;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;

/** Writes XML in order: elements, attributes, text. Attributes come in pairs of name and value. */
final class Xml {
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

  /** Opens an element. */
  Xml open(String name, Object... attributes) {
    start(name, attributes);
    out.append('>');
    open.push(name);
    return this;
  }

  /** An element without content. */
  Xml leaf(String name, Object... attributes) {
    start(name, attributes);
    out.append("/>");
    return this;
  }

  /** An element with text alone. */
  Xml leafText(String name, String text, Object... attributes) {
    return open(name, attributes).text(text).close();
  }

  /** Text inside the open element. */
  Xml text(String text) {
    escape(text, false);
    return this;
  }

  /** Closes the element opened last. */
  Xml close() {
    out.append("</").append(open.pop()).append('>');
    if (out.length() > CHUNK) {
      pass();
    }
    return this;
  }

  /** Closes that many elements. */
  Xml close(int times) {
    for (int i = 0; i < times; i++) {
      close();
    }
    return this;
  }

  /** Ends the document; every element must be closed. */
  void end() {
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

  private void start(String name, Object... attributes) {
    out.append('<').append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      escape(attributes[i + 1].toString(), true);
      out.append('"');
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
