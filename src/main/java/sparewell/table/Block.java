package sparewell.table;

import java.util.List;
import java.util.Optional;
import sparewell.finding.Cell;

/** A part of an output sheet; parts stand below each other. */
public interface Block {
  record Text(List<Line> lines) implements Block {
    public Text {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A table.
   *
   * @param about its one subject, such as a box, where there is a table for each; else empty
   * @param printed its rows that are printed, from the top; where there are more, nothing below is
   */
  record Rows(Table<?> table, String about, int printed) implements Block {
    public Rows(Table<?> table) {
      this(table, "", table.rows().size());
    }
  }

  /** A page break in print. */
  record NewPage() implements Block {}

  /** End of what is printed; the rest is for the screen alone. */
  record EndOfPrint() implements Block {}

  /** A table whose rows go to its file one by one; the sheet shows them in another way. */
  record FileOnly(Table<?> table) implements Block {}

  /** Cells that the angler types into, one a row in column B, each behind its label in column A. */
  record Form(List<Field> fields) implements Block {
    public Form {
      fields = List.copyOf(fields);
    }
  }

  /**
   * A cell to type into beside no table.
   *
   * @param label what it is for; it is read back by this
   * @param value what was typed before: text, a number or a date
   */
  record Field(String label, Entry entry, Optional<Object> value) {}

  record Line(String text, Weight weight, Tone tone, Optional<Cell> link) {
    public static Line of(String text) {
      return new Line(text, Weight.PLAIN, Tone.NONE, Optional.empty());
    }

    public static Line heading(String text) {
      return new Line(text, Weight.HEADING, Tone.NONE, Optional.empty());
    }
  }

  enum Weight {
    PLAIN,
    STRONG,
    HEADING,
    SMALL
  }
}
