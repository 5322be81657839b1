package sparewell.render;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;

/** Writes XML in order: elements, attributes, text. Attributes come in pairs of name and value. */
final class Xml {
  private static final int CHUNK = 1 << 13;

  private final ByteArrayOutputStream done = new ByteArrayOutputStream(CHUNK);
  private final StringBuilder out =
      new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n");
  private final Deque<String> open = new ArrayDeque<>();

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

  /** The whole document; every element must be closed. */
  byte[] bytes() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("still open: " + open);
    }
    pass();
    return done.toByteArray();
  }

  private void pass() {
    done.writeBytes(out.toString().getBytes(StandardCharsets.UTF_8));
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

  /** Whether XML 1.0 may hold the character. */
  private static boolean allowed(char c) {
    return c >= ' ' && !Character.isSurrogate(c) && c < '\uFFFE';
  }
}
