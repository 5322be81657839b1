package sparewell.save.append;

import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The elements of one name in a text, one after the other, which do not hold each other. */
final class Pieces {
  private final String text;
  private final Matcher tag;
  private final Matcher closing;
  private int from;

  /** An element: where it begins, its attributes by name, and what stands between its tags. */
  record Piece(int start, Map<String, String> attributes, String inside) {}

  Pieces(String text, String qualifiedName) {
    this.text = text;
    String name = Pattern.quote(qualifiedName);
    tag = Pattern.compile("<" + name + "((?:\\s[^>]*?)?)(/?)>").matcher(text);
    closing = Pattern.compile("</" + name + "\\s*>").matcher(text);
  }

  /** The next element; absent behind the last. */
  Optional<Piece> next() {
    if (!tag.find(from)) {
      return Optional.empty();
    }
    String inside = "";
    from = tag.end();
    if (tag.group(2).isEmpty()) {
      if (!closing.find(from)) {
        throw new IllegalArgumentException("an element without an end");
      }
      inside = text.substring(from, closing.start());
      from = closing.end();
    }
    return Optional.of(new Piece(tag.start(), SheetRow.attributes(tag.group(1)), inside));
  }
}
