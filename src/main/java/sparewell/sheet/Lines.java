package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.table.Block;
import sparewell.table.Tone;

/** Lines of text of a sheet, from the top down; their texts are those of {@link Phrase#text}. */
final class Lines {
  private final List<Block.Line> lines = new ArrayList<>();

  Lines heading(String pattern, Object... parts) {
    return add(Block.Line.heading(Phrase.text(pattern, parts)));
  }

  Lines plain(String pattern, Object... parts) {
    return add(Block.Line.of(Phrase.text(pattern, parts)));
  }

  Lines strong(Tone tone, String pattern, Object... parts) {
    return add(Phrase.strong(Phrase.text(pattern, parts), tone));
  }

  Lines small(String pattern, Object... parts) {
    return add(
        new Block.Line(
            Phrase.text(pattern, parts), Block.Weight.SMALL, Tone.NONE, Optional.empty()));
  }

  /** A note of {@code texts.txt} in small print, its places filled. */
  Lines note(String name, Object... parts) {
    return small(Columns.texts("Notes").get(name).get(1), parts);
  }

  Lines add(Block.Line line) {
    lines.add(line);
    return this;
  }

  List<Block.Line> list() {
    return List.copyOf(lines);
  }

  Block block() {
    return new Block.Text(lines);
  }

  /** The cautions that stand wherever weight or lead is spoken of, under their heading. */
  static Lines cautions() {
    Lines lines = new Lines().heading("Cautions");
    Columns.lines("Cautions").forEach(lines::small);
    return lines;
  }
}
