package sparewell.table;

import java.util.List;

/**
 * A picture made of simple shapes, for the renderer to draw as vectors. Positions and sizes are
 * shares of the picture's width (across) and height (down): 0, 0 is its left upper corner and 1, 1
 * its right lower one. Later shapes cover earlier ones. Nothing in it depends on colour.
 *
 * @param description what it shows, in words, for those who cannot see it
 * @param widthToHeightRatio its width divided by its height, &gt; 0
 */
public record Drawing(
    String title, String description, double widthToHeightRatio, List<Shape> shapes)
    implements Block {
  public Drawing {
    shapes = List.copyOf(shapes);
  }

  public sealed interface Shape permits Area, Outline, Caption, Stroke, Marker, Tag {}

  /** A rectangle with a thin black outline; {@code greyShare} 0 is white, 1 is black. */
  public record Area(Frame at, double greyShare, boolean dashed) implements Shape {}

  /** A closed line through at least three points, such as a hull, filled white. */
  public record Outline(List<Point> points) implements Shape {
    public Outline {
      points = List.copyOf(points);
    }
  }

  public record Point(double acrossShare, double downShare) {}

  public record Frame(double leftShare, double topShare, double widthShare, double heightShare) {}

  /**
   * Words about a point, put beside it where they cover no {@link Marker} and no other tag, as near
   * as that allows; drawn on top of everything. Where they stand apart from their point, a thin
   * line leads there.
   *
   * @param clearShare distance kept from the point, as a share of the picture's height: half the
   *     size of the marker there
   * @param lineHeightShare height of a line as a share of the picture's height
   */
  public record Tag(Point at, double clearShare, String text, double lineHeightShare)
      implements Shape {}

  /**
   * Text within a rectangle without outline, vertically in its middle; lines are parted by line
   * breaks.
   *
   * @param lineHeightShare height of one line as a share of the picture's height
   * @param light whether it is white (on a dark ground) and not black
   */
  public record Caption(
      Frame at, String text, double lineHeightShare, Align align, boolean strong, boolean light)
      implements Shape {}

  public record Stroke(Point from, Point to, boolean dashed, boolean arrow) implements Shape {}

  /**
   * A small mark around a point.
   *
   * @param sizeShare its height as a share of the picture's height; it is as wide as high
   */
  public record Marker(Point at, double sizeShare, Mark mark) implements Shape {}

  public enum Align {
    LEFT,
    CENTRE,
    RIGHT
  }

  /** Marks that can be told apart without colour. */
  public enum Mark {
    /** White disc with a black outline. */
    OPEN_CIRCLE,
    /** Black diamond with a white outline. */
    DIAMOND
  }
}
