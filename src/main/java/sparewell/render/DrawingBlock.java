package sparewell.render;

import java.util.Optional;
import sparewell.table.Drawing;
import sparewell.table.Layout;

/** Puts a drawing over cells, as a group of vector shapes. */
final class DrawingBlock {
  private DrawingBlock() {}

  static void lay(Drawing drawing, Grid grid, int firstRow) {
    int row = firstRow;
    if (!drawing.title().isEmpty()) {
      grid.titlesOfDrawn.add(row);
      TextBlock.put(drawing.title(), grid, row++, Look.HEADING);
    }
    double height = Layout.heightPoints(drawing);
    long high = Math.round(height * Measure.EMU_PER_POINT);
    long wide = Math.round(height * drawing.widthToHeightRatio() * Measure.EMU_PER_POINT);
    int at = row;
    grid.drawn.add(
        new Grid.Drawn(
            row,
            0,
            wide,
            high,
            Optional.empty(),
            anchor -> {
              long top =
                  Math.round(grid.pointsDown(1, at - 1) * grid.print * Measure.EMU_PER_POINT);
              return new ShapesXml(anchor, wide, high, top).group(drawing);
            }));
  }
}
