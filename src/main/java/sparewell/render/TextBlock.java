package sparewell.render;

import sparewell.finding.Cell;
import sparewell.table.Block;
import sparewell.table.Tone;

/** Lines of text: each in one row, over as many columns as the sheet gives to text. */
final class TextBlock {
  /** Steps by which a line that begins with blanks is set in. */
  private static final int DETAIL_INDENT = 2;

  /** Width of a step of it, the widest that programs make it. */
  private static final double INDENT_STEP_POINTS = 10;

  private TextBlock() {}

  static void lay(Block.Text text, Grid grid, int firstRow, RenderOptions options) {
    int row = firstRow;
    boolean linked = text.lines().stream().anyMatch(line -> line.link().isPresent());
    for (Block.Line line : text.lines()) {
      line(line, linked, grid, row++, options);
    }
  }

  /** Puts a line; among lines with links, the fill of one without goes as far as theirs. */
  private static void line(
      Block.Line line, boolean linked, Grid grid, int row, RenderOptions options) {
    Look plain =
        switch (line.weight()) {
          case PLAIN -> Look.line(Look.DEFAULT.face(), line.tone());
          case STRONG -> Look.line(new Look.Face(Look.BODY_POINTS, true), line.tone());
          case HEADING -> Look.line(Look.HEADING.face(), line.tone());
          case SMALL -> Look.line(Look.NOTE.face(), line.tone());
        };
    String text = line.text().stripLeading();
    boolean detail = text.length() < line.text().length();
    put(text, grid, row, detail ? plain.indented(DETAIL_INDENT) : plain);
    // A cell of its own, because spreadsheets may not wrap a link.
    if (line.link().isPresent()) {
      link(line.link().get(), grid, row, plain.asLink(), options);
    } else if (linked && line.tone() != Tone.NONE) {
      grid.put(row, grid.textColumns + 1, null, plain);
      grid.merge(row, grid.textColumns + 1, grid.linkColumns, plain);
    }
  }

  private static void link(Cell cell, Grid grid, int row, Look look, RenderOptions options) {
    int first = grid.textColumns + 1;
    grid.put(row, first, options.shown(cell), look);
    grid.merge(row, first, grid.linkColumns, look);
    grid.links.add(
        new Grid.Link(Grid.range(row, first, row, grid.linkColumns), options.location(cell)));
  }

  static void put(String text, Grid grid, int row, Look look) {
    put(text, grid, row, grid.textColumns, look);
  }

  static void put(String text, Grid grid, int row, int columns, Look look) {
    grid.put(row, 1, text, look);
    grid.merge(row, 1, columns, look);
    double width =
        grid.pointsAcross(columns)
            - Measure.CELL_MARGIN_POINTS
            - look.indent() * INDENT_STEP_POINTS;
    double points = look.face().points();
    int lines = TextSize.lines(text, points, look.face().bold(), width);
    grid.atLeast(row, Measure.rowPoints(lines, points));
  }
}
