package sparewell.render;

import sparewell.table.Tone;

/**
 * The look of a cell.
 *
 * @param fill colour behind as six hexadecimal digits; empty for none
 * @param across horizontal alignment as the file format names it; cells of tables are set in a
 *     little from the side
 * @param wrap whether long text goes on in a further line
 * @param indent how far text beside no table is set in, in steps of the file format
 */
record Look(
    String pattern, Face face, String fill, Edge edge, String across, boolean wrap, int indent) {
  Look(String pattern, Face face, String fill, Edge edge, String across, boolean wrap) {
    this(pattern, face, fill, edge, across, wrap, 0);
  }

  /** Letters; {@code rgb} is six hexadecimal digits. */
  record Face(double points, boolean bold, boolean underline, String rgb) {
    Face(double points, boolean bold) {
      this(points, bold, false, INK);
    }

    Face asLink() {
      return new Face(points, bold, true, LINK);
    }
  }

  enum Edge {
    NONE,
    UNDER,
    /** The same in a row that is high enough to write in. */
    UNDER_ROOM,
    HEAD,
    SUM,
    ENTRY,
    CUT_TOP,
    CUT_BOTTOM
  }

  static final String GENERAL = "General";
  static final String AS_TEXT = "@";
  static final String INK = "000000";
  static final String LINK = "0B4F8A";
  static final double BODY_POINTS = 10;

  private static final String HEAD_FILL = "DDE3EA";
  private static final Face BODY = new Face(BODY_POINTS, false);
  private static final Face STRONG = new Face(BODY_POINTS, true);

  static final Look DEFAULT = text(BODY, "");
  static final Look ANSWER = text(new Face(14, true), "");
  static final Look HEADING = text(new Face(12, true), "");
  static final Look NOTE = text(new Face(8.5, false, false, "404040"), "");
  static final Look NOTE_LINE = new Look(GENERAL, NOTE.face, "", Edge.NONE, "left", false);
  static final Look LABEL = new Look(GENERAL, BODY, "", Edge.CUT_BOTTOM, "left", true);
  static final Look FIGURE_HEAD = new Look(GENERAL, NOTE.face, "", Edge.HEAD, "left", true);

  static Look text(Face face, String fill) {
    return new Look(GENERAL, face, fill, Edge.NONE, "left", true);
  }

  Look indented(int steps) {
    return new Look(pattern, face, fill, edge, across, wrap, steps);
  }

  static Look line(Face face, Tone tone) {
    return text(face, fill(tone));
  }

  /** The heading over a column; one on the right keeps off the filter's arrow. */
  static Look tableHead(boolean overText, boolean arrow) {
    int indent = overText ? 1 : arrow ? 2 : 0;
    return new Look(
        GENERAL, STRONG, HEAD_FILL, Edge.HEAD, overText ? "left" : "right", true, indent);
  }

  static Look body(String pattern, Tone tone, Edge edge, boolean wrap, boolean link) {
    Face face = tone == Tone.BAD ? STRONG : BODY;
    String across = pattern.equals(AS_TEXT) ? "left" : "right";
    return new Look(pattern, link ? face.asLink() : face, fill(tone), edge, across, wrap);
  }

  static Look entry(String pattern) {
    return new Look(pattern, BODY, "", Edge.ENTRY, "left", true);
  }

  static Look sum(String pattern) {
    return new Look(
        pattern, STRONG, "", Edge.SUM, pattern.equals(AS_TEXT) ? "left" : "right", false);
  }

  static Look figure(String pattern) {
    return new Look(pattern, NOTE.face, "", Edge.NONE, "general", false);
  }

  static Look tape(String rgb) {
    boolean dark = !rgb.isEmpty() && lightness(rgb) < 0.5;
    Face face = new Face(9, true, false, dark ? "FFFFFF" : INK);
    return new Look(GENERAL, face, rgb, Edge.CUT_TOP, "left", false);
  }

  /** Lightness of a colour to the eye, 0 to 1: weights of ITU-R BT.709 without its gamma. */
  private static double lightness(String rgb) {
    int red = Integer.parseInt(rgb.substring(0, 2), 16);
    int green = Integer.parseInt(rgb.substring(2, 4), 16);
    int blue = Integer.parseInt(rgb.substring(4, 6), 16);
    return (0.2126 * red + 0.7152 * green + 0.0722 * blue) / 255;
  }

  Look larger(double times) {
    Face larger = new Face(face.points() * times, face.bold(), face.underline(), face.rgb());
    return times == 1 ? this : new Look(pattern, larger, fill, edge, across, wrap, indent);
  }

  Look asLink() {
    return new Look(pattern, face.asLink(), fill, edge, across, wrap);
  }

  /**
   * Fill of a tone. The three differ in lightness, so they stay apart in a grey print, and none
   * rests on red against green.
   */
  private static String fill(Tone tone) {
    return switch (tone) {
      case NONE -> "";
      case GOOD -> "E6F1FA";
      case WATCH -> "F7D98C";
      case BAD -> "E59B6F";
    };
  }
}
