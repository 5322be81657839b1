package sparewell.render;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import sparewell.declared.DeclaredTable;

/**
 * Writes XML in order, from pieces that stand as text in {@code pieces.txt} among the resources. A
 * boolean value is written as 1 or 0.
 */
final class Xml {
  private static final int CHUNK = 1 << 13;
  private static final Map<String, XmlPiece> PIECES = new HashMap<>();

  static {
    DeclaredTable.read(Xml.class, "pieces.txt")
        .forEach((name, lines) -> PIECES.put(name, XmlPiece.of(lines)));
  }

  private final OutputStream done;
  private final StringBuilder out = new StringBuilder();

  private Xml(OutputStream done) {
    this.done = done;
  }

  /** Writes a document to a stream, which stays open. */
  static void document(OutputStream done, Consumer<Xml> content) {
    Xml xml = new Xml(done);
    xml.add("document");
    content.accept(xml);
    xml.pass();
  }

  static String filled(String piece, Object... values) {
    StringBuilder alone = new StringBuilder();
    PIECES.get(piece).fill(alone, values);
    return alone.toString();
  }

  static <T> String each(List<T> all, Function<T, String> piece) {
    return all.stream().map(piece).collect(Collectors.joining());
  }

  /**
   * A list in a piece that takes how many there are and all of them; empty where there are none.
   */
  static <T> String counted(String around, List<T> all, Function<T, String> piece) {
    return all.isEmpty() ? "" : filled(around, all.size(), each(all, piece));
  }

  void add(String piece, Object... values) {
    PIECES.get(piece).fill(out, values);
    if (out.length() > CHUNK) {
      pass();
    }
  }

  private void pass() {
    try {
      done.write(out.toString().getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    out.setLength(0);
  }
}
