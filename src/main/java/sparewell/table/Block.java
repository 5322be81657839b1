package sparewell.table;

import java.util.List;
import java.util.Optional;
import sparewell.finding.Cell;

/** A part of an output sheet; parts stand below each other. */
public sealed interface Block permits Block.Text, Block.Rows, Chart, Drawing, LabelGrid {
  /** Lines of text. */
  record Text(List<Line> lines) implements Block {
    public Text {
      lines = List.copyOf(lines);
    }
  }

  /** A table. */
  record Rows(Table<?> table) implements Block {}

  /**
   * One line of text.
   *
   * @param text what it says
   * @param weight how it stands out
   * @param tone state of health
   * @param link the cell it leads to
   */
  record Line(String text, Weight weight, Tone tone, Optional<Cell> link) {
    /** Plain text. */
    public static Line of(String text) {
      return new Line(text, Weight.PLAIN, Tone.NONE, Optional.empty());
    }

    /** A heading. */
    public static Line heading(String text) {
      return new Line(text, Weight.HEADING, Tone.NONE, Optional.empty());
    }
  }

  /** How a line stands out. */
  enum Weight {
    PLAIN,
    STRONG,
    HEADING,
    SMALL
  }
}
