package sparewell.render;

import java.util.Locale;
import sparewell.table.Drawing;

/**
 * The shapes of a drawing as one group.
 *
 * @see "ECMA-376 part 1, sections 20.1 and 20.5"
 */
final class ShapesXml {
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

  private final Xml xml;
  private final Grid.Anchor anchor;
  private final long wide;
  private final long high;
  private final long top;

  ShapesXml(Grid.Anchor anchor, long wide, long high, long top) {
    this.anchor = anchor;
    this.xml = anchor.xml();
    this.wide = wide;
    this.high = high;
    this.top = top;
  }

  void group(Drawing drawing) {
    int id = anchor.ids().getAsInt();
    xml.open("xdr:grpSp").open("xdr:nvGrpSpPr");
    xml.leaf("xdr:cNvPr id='{}' name='Drawing {}' descr='{}'", id, id, drawing.description());
    xml.leaf("xdr:cNvGrpSpPr").close().open("xdr:grpSpPr").open("a:xfrm");
    xml.leaf("a:off x='0' y='{}'", top).leaf("a:ext cx='{}' cy='{}'", wide, high);
    xml.leaf("a:chOff x='0' y='0'").leaf("a:chExt cx='{}' cy='{}'", wide, high).close(2);
    // Spans the whole box, so that a program that shrinks a group to its shapes keeps the places.
    shape("rect", 0, 0, 1, 1, "frame");
    xml.leaf("a:noFill").open("a:ln").leaf("a:noFill").close().close(2);
    for (Drawing.Shape shape : drawing.shapes()) {
      if (shape instanceof Drawing.Area area) {
        area(area);
      } else if (shape instanceof Drawing.Outline outline) {
        outline(outline);
      } else if (shape instanceof Drawing.Caption caption) {
        caption(caption);
      } else if (shape instanceof Drawing.Stroke stroke) {
        stroke(stroke);
      } else if (shape instanceof Drawing.Marker marker) {
        marker(marker);
      }
    }
    TagPlaces places = new TagPlaces(drawing, points(wide), points(high));
    for (Drawing.Shape shape : drawing.shapes()) {
      if (shape instanceof Drawing.Tag tag) {
        tag(tag, places);
      }
    }
    xml.close();
  }

  private static double points(long emu) {
    return (double) emu / Measure.EMU_PER_POINT;
  }

  private void tag(Drawing.Tag tag, TagPlaces places) {
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
    if (box.step() > 0) {
      double nearX = Math.max(left, Math.min(left + widthShare, tag.acrossShare()));
      double nearY = Math.max(upper, Math.min(upper + height, tag.downShare()));
      stroke(new Drawing.Stroke(tag.acrossShare(), tag.downShare(), nearX, nearY, false, false));
    }
    caption(
        new Drawing.Caption(
            left,
            upper,
            widthShare,
            height,
            tag.text(),
            tag.lineHeightShare(),
            Drawing.Align.CENTRE,
            false,
            false));
  }

  /** A path in units of the picture's own size. */
  private void outline(Drawing.Outline outline) {
    int id = anchor.ids().getAsInt();
    xml.open("xdr:sp macro='' textlink=''").open("xdr:nvSpPr");
    xml.leaf("xdr:cNvPr id='{}' name='outline {}'", id, id).leaf("xdr:cNvSpPr").close();
    xml.open("xdr:spPr").open("a:xfrm");
    place(0, 0, 1, 1);
    xml.close().open("a:custGeom");
    xml.leaf("a:avLst").leaf("a:gdLst").leaf("a:ahLst").leaf("a:cxnLst");
    xml.leaf("a:rect l='0' t='0' r='r' b='b'").open("a:pathLst");
    xml.open("a:path w='{}' h='{}'", wide, high);
    String step = "a:moveTo";
    for (Drawing.Point point : outline.points()) {
      xml.open(step);
      long x = Math.round(point.acrossShare() * wide);
      xml.leaf("a:pt x='{}' y='{}'", x, Math.round(point.downShare() * high)).close();
      step = "a:lnTo";
    }
    xml.leaf("a:close").close(3);
    grey(outline.greyShare());
    line(BLACK, THIN, false);
    xml.close(2);
  }

  private void grey(double share) {
    int level = (int) Math.round(255 * (1 - share));
    String grey = String.format(Locale.ROOT, "%02X", level).repeat(3);
    xml.open("a:solidFill").leaf("a:srgbClr val='{}'", grey).close();
  }

  private void area(Drawing.Area area) {
    shape("rect", area.leftShare(), area.topShare(), area.widthShare(), area.heightShare(), "area");
    grey(area.greyShare());
    line(BLACK, THIN, area.dashed());
    xml.close(2);
  }

  private void caption(Drawing.Caption caption) {
    double points = captionPoints(caption);
    String[] lines = caption.text().split("\n", -1);
    shape(
        "rect",
        caption.leftShare(),
        caption.topShare(),
        caption.widthShare(),
        caption.heightShare(),
        "text");
    xml.leaf("a:noFill").open("a:ln").leaf("a:noFill").close(2);
    xml.open("xdr:txBody");
    xml.leaf(
        "a:bodyPr wrap='{}' lIns='{}' tIns='0' rIns='{}' bIns='0' anchor='ctr'",
        wraps(caption, points) ? "square" : "none",
        INSET,
        INSET);
    xml.leaf("a:lstStyle");
    String align =
        switch (caption.align()) {
          case LEFT -> "l";
          case CENTRE -> "ctr";
          case RIGHT -> "r";
        };
    for (String line : lines) {
      xml.open("a:p").leaf("a:pPr algn='{}'", align).open("a:r");
      xml.open("a:rPr lang='en-US' sz='{}' b='{}'", Math.round(points * 10) * 10, caption.strong());
      String colour = caption.light() ? WHITE : BLACK;
      xml.open("a:solidFill").leaf("a:srgbClr val='{}'", colour).close();
      xml.leaf("a:latin typeface='Arial'").close();
      xml.leafText("a:t", line).close(2);
    }
    xml.close(2);
  }

  /** Lines in the middle that need not be wrapped stay whole where another font is wider. */
  private boolean wraps(Drawing.Caption caption, double points) {
    double width = (caption.widthShare() * wide - 2 * INSET) / Measure.EMU_PER_POINT;
    return caption.align() != Drawing.Align.CENTRE
        || caption
            .text()
            .lines()
            .anyMatch(line -> TextSize.width(line, points, caption.strong()) > width + 0.1);
  }

  /** The size asked for, or the largest below it at which the text stays in its rectangle. */
  private double captionPoints(Drawing.Caption caption) {
    double width = (caption.widthShare() * wide - 2 * INSET) / Measure.EMU_PER_POINT;
    double height = caption.heightShare() * high / Measure.EMU_PER_POINT;
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

  private void stroke(Drawing.Stroke stroke) {
    double left = Math.min(stroke.fromAcrossShare(), stroke.toAcrossShare());
    double upper = Math.min(stroke.fromDownShare(), stroke.toDownShare());
    int id = anchor.ids().getAsInt();
    xml.open("xdr:cxnSp macro=''").open("xdr:nvCxnSpPr");
    xml.leaf("xdr:cNvPr id='{}' name='line {}'", id, id).leaf("xdr:cNvCxnSpPr").close();
    xml.open("xdr:spPr");
    xml.open(
        "a:xfrm flipH='{}' flipV='{}'",
        stroke.toAcrossShare() < stroke.fromAcrossShare(),
        stroke.toDownShare() < stroke.fromDownShare());
    place(
        left,
        upper,
        Math.abs(stroke.toAcrossShare() - stroke.fromAcrossShare()),
        Math.abs(stroke.toDownShare() - stroke.fromDownShare()));
    xml.close().open("a:prstGeom prst='line'").leaf("a:avLst").close();
    xml.open("a:ln w='{}'", stroke.arrow() ? THICK : THIN);
    xml.open("a:solidFill").leaf("a:srgbClr val='{}'", BLACK).close();
    xml.leaf("a:prstDash val='{}'", stroke.dashed() ? "dash" : "solid");
    if (stroke.arrow()) {
      xml.leaf("a:tailEnd type='triangle' w='med' len='med'");
    }
    xml.close(3);
  }

  private void marker(Drawing.Marker marker) {
    double widthShare = marker.sizeShare() * high / wide;
    boolean open = marker.mark() == Drawing.Mark.OPEN_CIRCLE;
    shape(
        marker.mark() == Drawing.Mark.DIAMOND ? "diamond" : "ellipse",
        marker.acrossShare() - widthShare / 2,
        marker.downShare() - marker.sizeShare() / 2,
        widthShare,
        marker.sizeShare(),
        "mark");
    xml.open("a:solidFill").leaf("a:srgbClr val='{}'", open ? WHITE : BLACK).close();
    line(open ? BLACK : WHITE, open ? THICK : THIN, false);
    xml.close(2);
  }

  private void shape(
      String form, double left, double upper, double width, double height, String name) {
    int id = anchor.ids().getAsInt();
    xml.open("xdr:sp macro='' textlink=''").open("xdr:nvSpPr");
    xml.leaf("xdr:cNvPr id='{}' name='{} {}'", id, name, id).leaf("xdr:cNvSpPr").close();
    xml.open("xdr:spPr").open("a:xfrm");
    place(left, upper, width, height);
    xml.close().open("a:prstGeom prst='{}'", form).leaf("a:avLst").close();
  }

  private void place(double left, double upper, double width, double height) {
    xml.leaf("a:off x='{}' y='{}'", Math.round(left * wide), Math.round(upper * high));
    xml.leaf("a:ext cx='{}' cy='{}'", Math.round(width * wide), Math.round(height * high));
  }

  private void line(String colour, int width, boolean dashed) {
    xml.open("a:ln w='{}'", width).open("a:solidFill").leaf("a:srgbClr val='{}'", colour).close();
    xml.leaf("a:prstDash val='{}'", dashed ? "dash" : "solid").close();
  }
}
