package sparewell.save;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;

/**
 * One of our own parts as tags and what stands between them. Much faster than a parser of any XML,
 * and enough for parts that we wrote ourselves: no comments, no CDATA, quotes are double.
 */
final class Markup {
  private final Reader in;
  private final char[] buffer = new char[1 << 13];
  private final StringBuilder tag = new StringBuilder();
  private int at;
  private int end;

  Markup(Reader in) {
    this.in = in;
  }

  /**
   * Copies what stands before the next tag, and reads that tag.
   *
   * @return false at the end of the part
   */
  boolean next(Writer out) throws IOException {
    tag.setLength(0);
    while (more()) {
      int from = at;
      while (at < end && buffer[at] != '<') {
        at++;
      }
      out.write(buffer, from, at - from);
      if (at < end) {
        readTag();
        return true;
      }
    }
    return false;
  }

  private void readTag() throws IOException {
    boolean quoted = false;
    while (more()) {
      int from = at;
      while (at < end && (quoted || buffer[at] != '>')) {
        quoted ^= buffer[at++] == '"';
      }
      if (at < end) {
        tag.append(buffer, from, ++at - from);
        return;
      }
      tag.append(buffer, from, at - from);
    }
    throw new IOException("our own part ends within a tag: " + tag);
  }

  private boolean more() throws IOException {
    if (at == end) {
      at = 0;
      end = Math.max(0, in.read(buffer));
    }
    return at < end;
  }

  /** The tag read last, from &lt; to &gt;. */
  CharSequence tag() {
    return tag;
  }

  /** Whether the tag read last opens such an element. */
  boolean opens(String element) {
    int n = element.length();
    if (tag.length() < n + 2) {
      return false;
    }
    for (int i = 0; i < n; i++) {
      if (tag.charAt(i + 1) != element.charAt(i)) {
        return false;
      }
    }
    char after = tag.charAt(n + 1);
    return after == ' ' || after == '>' || after == '/' || after == '\n';
  }

  /** Whether the tag read last holds such text. */
  boolean mentions(String text) {
    return tag.indexOf(text) >= 0;
  }

  /** The escaped value of an attribute of the tag read last; null where it has none. */
  String value(String attribute) {
    int name = tag.indexOf(" " + attribute + "=\"");
    if (name < 0) {
      return null;
    }
    int from = name + attribute.length() + 3;
    return tag.substring(from, tag.indexOf("\"", from));
  }

  /** Replaces an attribute's value in the tag read last, or takes the attribute out with null. */
  void replace(String attribute, String value) {
    int name = tag.indexOf(" " + attribute + "=\"");
    int from = name + attribute.length() + 3;
    int to = tag.indexOf("\"", from);
    if (value == null) {
      tag.delete(name, to + 1);
    } else {
      tag.replace(from, to, value);
    }
  }
}
