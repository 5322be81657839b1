package sparewell.render;

import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Notes on headings: their text, and the boxes that show them. */
final class NotesXml {
  private static final int CHARACTERS_A_LINE = 34;
  private static final int SHAPES_A_SHEET = 1_024;

  private NotesXml() {}

  static void texts(Xml xml, Grid grid) {
    xml.add("notes", Xml.each(grid.notes, NotesXml::text));
  }

  private static String text(Grid.Note note) {
    String cell = Grid.reference(note.row(), note.column());
    return Xml.filled("note", cell, SheetXml.text(note.text()));
  }

  static void boxes(Xml xml, Grid grid, int sheet) {
    String all =
        IntStream.range(0, grid.notes.size())
            .mapToObj(i -> box(grid.notes.get(i), sheet * SHAPES_A_SHEET + i + 1))
            .collect(Collectors.joining());
    xml.add("note boxes", sheet, all);
  }

  private static String box(Grid.Note note, int id) {
    int high = (1 + note.text().length() / CHARACTERS_A_LINE) * 12 + 8;
    int column = note.column();
    int row = note.row() - 1;
    int lastRow = row + 2 + high / 15;
    return Xml.filled("note box", id, high, column, row, column + 3, lastRow, column - 1);
  }
}
