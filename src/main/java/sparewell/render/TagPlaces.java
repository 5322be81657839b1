package sparewell.render;

import java.util.ArrayList;
import java.util.List;
import sparewell.table.Drawing;

/** Finds a free place for each tag of a drawing, in the order of the tags. */
final class TagPlaces {
  /** Steps around a point, right first: reading goes on there. */
  private static final double[][] SIDES = {
    {1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {1, 1}, {-1, -1}, {-1, 1}
  };

  private static final int FARTHEST = 8;

  /** Covering a caption, an area or a line is less bad than covering a marker. */
  private static final double SOFT_WEIGHT = 0.1;

  /** Points of a line that are looked at, in points. */
  private static final double STEP_POINTS = 4;

  private static final double OUTSIDE_WEIGHT = 10;

  private final double wide;
  private final double high;
  private final List<Box> hard = new ArrayList<>();
  private final List<Box> soft = new ArrayList<>();

  /** A rectangle in points, {@code step} steps from its point; 0 is beside it. */
  record Box(double left, double top, double width, double height, int step) {
    double shared(Box other) {
      double across = Math.min(left + width, other.left + other.width) - Math.max(left, other.left);
      double down = Math.min(top + height, other.top + other.height) - Math.max(top, other.top);
      return across > 0 && down > 0 ? across * down : 0;
    }
  }

  TagPlaces(Drawing drawing, double widePoints, double highPoints) {
    wide = widePoints;
    high = highPoints;
    for (Drawing.Shape shape : drawing.shapes()) {
      if (shape instanceof Drawing.Marker marker) {
        hard.add(around(marker.at(), marker.sizeShare() * high));
      } else if (shape instanceof Drawing.Caption caption) {
        cover(caption.at());
      } else if (shape instanceof Drawing.Area area) {
        cover(area.at());
      } else if (shape instanceof Drawing.Outline outline) {
        for (int i = 1; i < outline.points().size(); i++) {
          line(outline.points().get(i - 1), outline.points().get(i));
        }
      } else if (shape instanceof Drawing.Stroke stroke) {
        line(stroke.from(), stroke.to());
      }
    }
  }

  private void cover(Drawing.Frame at) {
    soft.add(
        new Box(
            at.leftShare() * wide,
            at.topShare() * high,
            at.widthShare() * wide,
            at.heightShare() * high,
            0));
  }

  private Box around(Drawing.Point at, double size) {
    double left = at.acrossShare() * wide - size / 2;
    double top = at.downShare() * high - size / 2;
    return new Box(left, top, size, size, 0);
  }

  private void line(Drawing.Point from, Drawing.Point to) {
    double across = to.acrossShare() - from.acrossShare();
    double down = to.downShare() - from.downShare();
    int steps = (int) Math.ceil(Math.hypot(across * wide, down * high) / STEP_POINTS);
    for (int i = 0; i <= steps; i++) {
      double share = steps == 0 ? 0 : (double) i / steps;
      double x = from.acrossShare() + share * across;
      soft.add(around(new Drawing.Point(x, from.downShare() + share * down), 2));
    }
  }

  /** The best place; what is put later keeps off it. */
  Box place(Drawing.Tag tag, double width, double height) {
    Box best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int step = 0; step < FARTHEST && least > 0; step++) {
      for (double[] side : SIDES) {
        Box box = beside(tag, width, height, side, step);
        double cost = cost(box);
        if (cost < least - 1e-9) {
          least = cost;
          best = box;
        }
      }
    }
    hard.add(best);
    return best;
  }

  private Box beside(Drawing.Tag tag, double width, double height, double[] side, int step) {
    double off = tag.clearShare() * high + 1 + step * height / 2;
    double x = tag.at().acrossShare() * wide + side[0] * (off + width / 2);
    double y = tag.at().downShare() * high + side[1] * (off + height / 2);
    return new Box(x - width / 2, y - height / 2, width, height, step);
  }

  private double cost(Box box) {
    double area = box.width() * box.height();
    Box paper = new Box(0, 0, wide, high, 0);
    double cost = OUTSIDE_WEIGHT * (area - paper.shared(box)) / area;
    for (Box other : hard) {
      cost += box.shared(other) / area;
    }
    for (Box other : soft) {
      cost += SOFT_WEIGHT * box.shared(other) / area;
    }
    return cost;
  }
}
