package sparewell.render;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sparewell.table.Drawing;
import sparewell.table.Layout;

/** The shapes of a drawing as one group (ECMA-376 part 1, sections 20.1 and 20.5). */
record ShapesXml(Grid.Anchor anchor, long wide, long high, long top) {
  private static final String BLACK = "000000";
  private static final String WHITE = "FFFFFF";
  private static final int THIN = 9_525;
  private static final int THICK = 19_050;
  private static final int INSET = 25_400;
  private static final double LINE_OF_FONT = 1.2;

  /** Spare width, for programs whose letters are a little wider. */
  private static final double SPARE = 1.05;

  private static final double SMALLEST_POINTS = 5;
  private static final double POINT_STEP = 0.25;
  private static final Drawing.Frame WHOLE = new Drawing.Frame(0, 0, 1, 1);

  static void lay(Drawing drawing, Grid grid, int firstRow) {
    int row = firstRow;
    if (!drawing.title().isEmpty()) {
      grid.titlesOfDrawn.add(row);
      TextBlock.put(drawing.title(), grid, row++, Look.HEADING);
    }
    double height = Layout.heightPoints(drawing);
    long high = Math.round(height * Measure.EMU_PER_POINT);
    long wide = Math.round(height * drawing.widthToHeightRatio() * Measure.EMU_PER_POINT);
    int above = row - 1;
    grid.drawn.add(
        new Grid.Drawn(
            row,
            0,
            wide,
            high,
            Optional.empty(),
            anchor -> {
              double top = grid.pointsDown(1, above) * grid.print * Measure.EMU_PER_POINT;
              return new ShapesXml(anchor, wide, high, Math.round(top)).group(drawing);
            }));
  }

  private String group(Drawing drawing) {
    int id = anchor.ids().getAsInt();
    StringBuilder all = new StringBuilder();
    // Spans the whole box, so that a program that shrinks a group to its shapes keeps the places.
    all.append(shape("frame", place(WHOLE), "rect", Xml.filled("unseen"), ""));
    for (Drawing.Shape shape : drawing.shapes()) {
      if (shape instanceof Drawing.Area area) {
        all.append(area(area));
      } else if (shape instanceof Drawing.Outline outline) {
        all.append(outline(outline));
      } else if (shape instanceof Drawing.Caption caption) {
        all.append(caption(caption));
      } else if (shape instanceof Drawing.Stroke stroke) {
        all.append(stroke(stroke));
      } else if (shape instanceof Drawing.Marker marker) {
        all.append(marker(marker));
      }
    }
    TagPlaces places = new TagPlaces(drawing, points(wide), points(high));
    for (Drawing.Shape shape : drawing.shapes()) {
      if (shape instanceof Drawing.Tag tag) {
        all.append(tag(tag, places));
      }
    }
    return Xml.filled("group", id, drawing.description(), top, wide, high, all);
  }

  private static double points(long emu) {
    return (double) emu / Measure.EMU_PER_POINT;
  }

  private String tag(Drawing.Tag tag, TagPlaces places) {
    double size = tag.lineHeightShare() * points(high) / LINE_OF_FONT;
    String[] lines = tag.text().split("\n");
    double width = 0;
    for (String line : lines) {
      width = Math.max(width, TextSize.width(line, size * SPARE, false));
    }
    double height = lines.length * tag.lineHeightShare();
    TagPlaces.Box box = places.place(tag, width + 2 * points(INSET), height * points(high));
    double left = box.left() / points(wide);
    double upper = box.top() / points(high);
    double widthShare = box.width() / points(wide);
    String line = "";
    if (box.step() > 0) {
      double nearX = Math.max(left, Math.min(left + widthShare, tag.at().acrossShare()));
      double nearY = Math.max(upper, Math.min(upper + height, tag.at().downShare()));
      line = stroke(new Drawing.Stroke(tag.at(), new Drawing.Point(nearX, nearY), false, false));
    }
    Drawing.Frame at = new Drawing.Frame(left, upper, widthShare, height);
    Drawing.Align centre = Drawing.Align.CENTRE;
    double lineHeight = tag.lineHeightShare();
    return line + caption(new Drawing.Caption(at, tag.text(), lineHeight, centre, false, false));
  }

  /** A path in units of the picture's own size. */
  private String outline(Drawing.Outline outline) {
    StringBuilder steps = new StringBuilder();
    for (Drawing.Point point : outline.points()) {
      String kind = steps.isEmpty() ? "a:moveTo" : "a:lnTo";
      long x = Math.round(point.acrossShare() * wide);
      steps.append(Xml.filled("step", kind, x, Math.round(point.downShare() * high)));
    }
    return Xml.filled(
        "shape",
        anchor.ids().getAsInt(),
        "outline",
        place(WHOLE),
        Xml.filled("path", wide, high, steps),
        grey(0) + line(BLACK, THIN, false),
        "");
  }

  private static String grey(double share) {
    int level = (int) Math.round(255 * (1 - share));
    return Xml.filled("filled", String.format(Locale.ROOT, "%02X", level).repeat(3));
  }

  private String area(Drawing.Area area) {
    String look = grey(area.greyShare()) + line(BLACK, THIN, area.dashed());
    return shape("area", place(area.at()), "rect", look, "");
  }

  private String caption(Drawing.Caption caption) {
    double points = captionPoints(caption);
    String align =
        switch (caption.align()) {
          case LEFT -> "l";
          case CENTRE -> "ctr";
          case RIGHT -> "r";
        };
    String lines =
        Xml.each(
            List.of(caption.text().split("\n", -1)),
            line ->
                Xml.filled(
                    "line of words",
                    align,
                    Math.round(points * 10) * 10,
                    caption.strong(),
                    caption.light() ? WHITE : BLACK,
                    line));
    return shape(
        "text",
        place(caption.at()),
        "rect",
        Xml.filled("unseen"),
        Xml.filled("words", wraps(caption, points) ? "square" : "none", INSET, lines));
  }

  /** Lines in the middle that need not be wrapped stay whole where another font is wider. */
  private boolean wraps(Drawing.Caption caption, double points) {
    return caption.align() != Drawing.Align.CENTRE
        || caption
            .text()
            .lines()
            .anyMatch(
                line ->
                    TextSize.width(line, points, caption.strong()) > innerPoints(caption) + 0.1);
  }

  private double innerPoints(Drawing.Caption caption) {
    return (caption.at().widthShare() * wide - 2 * INSET) / Measure.EMU_PER_POINT;
  }

  /** The size asked for, or the largest below it at which the text stays in its rectangle. */
  private double captionPoints(Drawing.Caption caption) {
    double width = innerPoints(caption);
    double height = caption.at().heightShare() * high / Measure.EMU_PER_POINT;
    double most = caption.lineHeightShare() * high / Measure.EMU_PER_POINT / LINE_OF_FONT;
    int steps = 0;
    while (most - steps * POINT_STEP > SMALLEST_POINTS
        && !fits(caption, (most - steps * POINT_STEP) * SPARE, width, height)) {
      steps++;
    }
    return most - steps * POINT_STEP;
  }

  private static boolean fits(Drawing.Caption caption, double points, double width, double height) {
    for (String word : caption.text().split("\\s")) {
      if (TextSize.width(word, points, caption.strong()) > width) {
        return false;
      }
    }
    int lines = TextSize.lines(caption.text(), points, caption.strong(), width);
    return lines == 1 || lines * points * LINE_OF_FONT <= height;
  }

  private String stroke(Drawing.Stroke stroke) {
    Drawing.Point from = stroke.from();
    Drawing.Point to = stroke.to();
    double across = to.acrossShare() - from.acrossShare();
    double down = to.downShare() - from.downShare();
    double left = Math.min(from.acrossShare(), to.acrossShare());
    double upper = Math.min(from.downShare(), to.downShare());
    return Xml.filled(
        "line between",
        anchor.ids().getAsInt(),
        across < 0,
        down < 0,
        place(new Drawing.Frame(left, upper, Math.abs(across), Math.abs(down))),
        Xml.filled(
            "outline",
            stroke.arrow() ? THICK : THIN,
            BLACK,
            stroke.dashed() ? "dash" : "solid",
            stroke.arrow() ? Xml.filled("arrow head") : ""));
  }

  private String marker(Drawing.Marker marker) {
    double widthShare = marker.sizeShare() * high / wide;
    double left = marker.at().acrossShare() - widthShare / 2;
    double upper = marker.at().downShare() - marker.sizeShare() / 2;
    boolean open = marker.mark() == Drawing.Mark.OPEN_CIRCLE;
    return shape(
        "mark",
        place(new Drawing.Frame(left, upper, widthShare, marker.sizeShare())),
        open ? "ellipse" : "diamond",
        Xml.filled("filled", open ? WHITE : BLACK)
            + line(open ? BLACK : WHITE, open ? THICK : THIN, false),
        "");
  }

  private String shape(String name, String place, String form, String look, String text) {
    int id = anchor.ids().getAsInt();
    return Xml.filled("shape", id, name, place, Xml.filled("usual form", form), look, text);
  }

  private String place(Drawing.Frame at) {
    return Xml.filled(
        "place",
        Math.round(at.leftShare() * wide),
        Math.round(at.topShare() * high),
        Math.round(at.widthShare() * wide),
        Math.round(at.heightShare() * high));
  }

  private static String line(String colour, int width, boolean dashed) {
    return Xml.filled("outline", width, colour, dashed ? "dash" : "solid", "");
  }
}
