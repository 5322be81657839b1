package sparewell.table;

import java.util.List;
import java.util.Optional;
import sparewell.units.Length;

/**
 * Labels to print and cut out, side by side at their exact size.
 *
 * <p>What does not fit a label at a readable size goes on to a further label with the same head;
 * nothing is cut off.
 *
 * @param width width of one label, 20 mm to 200 mm
 * @param height height of one label, 15 mm to 250 mm
 * @param whenEmpty what the sheet says where there are none
 */
public record LabelGrid(
    Length width, Length height, int across, int down, List<Label> labels, String whenEmpty)
    implements Block {
  public LabelGrid {
    labels = List.copyOf(labels);
  }

  /** One label; {@code head} names the thing, on every part of it. */
  public record Label(List<Words> head, List<Words> body, Optional<Tape> tape) {
    public Label {
      head = List.copyOf(head);
      body = List.copyOf(body);
    }
  }

  /** Words on a label; a long line is wrapped. */
  public record Words(String text, Size size) {}

  /** Sizes of words; each shrinks a little before a label is split. */
  public enum Size {
    SMALL,
    MEDIUM,
    /** Readable from two metres. */
    LARGE
  }

  /** A strip of colour, always named in words too; {@code rgb} is empty for an unknown word. */
  public record Tape(String word, String rgb) {}
}
