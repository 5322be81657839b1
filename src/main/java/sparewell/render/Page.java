package sparewell.render;

import sparewell.table.LabelGrid;
import sparewell.units.LengthUnit;
import sparewell.units.UnitSystem;

/**
 * The page that a sheet is printed on, lengths in mm. The spreadsheet shrinks every sheet to the
 * width of its page, because columns are wider where a font is missing.
 *
 * @param sideMm blank on the left
 * @param rightMm blank on the right: more of it makes the spreadsheet shrink a sheet further
 * @param headerMm distance of header and footer from the edge
 * @param scalePercent scale that is reckoned with to find where pages end
 */
record Page(
    Paper paper,
    boolean landscape,
    double sideMm,
    double rightMm,
    double topMm,
    double bottomMm,
    double headerMm,
    int scalePercent) {
  private static final double PORTRAIT_POINTS = 690;
  private static final double SIDE_MM = 11;

  /** Side margin of a wide sheet, whose print would get smaller still. */
  private static final double WIDE_SIDE_MM = 8;

  private static final double FULL_SIDE_MM = 6.4;

  private static final int LEAST_SCALE = 20;

  /** Blank edge that a printer needs at least. */
  private static final double LEAST_MARGIN_MM = 3.5;

  /** Room for rounding, so that the last row of labels is not pushed to the next page. */
  private static final double SLACK_MM = 1;

  enum Paper {
    LETTER(1, 215.9, 279.4),
    A4(9, 210, 297);

    final int code;
    final double widthMm;
    final double heightMm;

    Paper(int code, double widthMm, double heightMm) {
      this.code = code;
      this.widthMm = widthMm;
      this.heightMm = heightMm;
    }
  }

  static Paper usualPaper(UnitSystem units) {
    return units == UnitSystem.US ? Paper.LETTER : Paper.A4;
  }

  /**
   * A page for labels at their exact size, in the middle of the paper: the usual paper where they
   * fit, else the other one.
   */
  static Page exact(LabelGrid labels, UnitSystem units) {
    Paper usual = usualPaper(units);
    Paper other = usual == Paper.A4 ? Paper.LETTER : Paper.A4;
    Paper paper = fits(labels, usual) || !fits(labels, other) ? usual : other;
    double high = labels.height().in(LengthUnit.MILLIMETRE) * labelsDown(labels, paper);
    // The page centres the labels; small sides leave room to programs that draw columns wider.
    double side = LEAST_MARGIN_MM - SLACK_MM;
    double top = Math.max(0, (paper.heightMm - high) / 2 - SLACK_MM);
    return new Page(paper, false, side, side, top, top, 0, 100);
  }

  /** Rows of labels on a page: fewer than asked for where the paper is too short. */
  static int labelsDown(LabelGrid labels, Paper paper) {
    double height = labels.height().in(LengthUnit.MILLIMETRE);
    int most = (int) Math.floor((paper.heightMm - 2 * LEAST_MARGIN_MM) / height);
    return Math.max(1, Math.min(labels.down(), most));
  }

  private static boolean fits(LabelGrid labels, Paper paper) {
    double wide = labels.width().in(LengthUnit.MILLIMETRE) * labels.across();
    return labelsDown(labels, paper) == labels.down()
        && wide <= paper.widthMm - 2 * LEAST_MARGIN_MM;
  }

  /** A page on which so wide a sheet is shrunk to the width, lying where it is wide. */
  static Page fitting(double widthPoints, UnitSystem units) {
    return usual(usualPaper(units), widthPoints > PORTRAIT_POINTS);
  }

  private static Page usual(Paper paper, boolean lying) {
    double side = lying ? WIDE_SIDE_MM : SIDE_MM;
    return new Page(paper, lying, side, side, 15, 14, 7, 0);
  }

  /** An upright page with all the room that printers leave to cells. */
  static Page full(UnitSystem units) {
    return new Page(usualPaper(units), false, FULL_SIDE_MM, FULL_SIDE_MM, 12, 11, 5, 0);
  }

  Page turned() {
    return usual(paper, !landscape);
  }

  Page scaledTo(double widthPoints) {
    double share = (acrossMm() - 2 * sideMm) * Measure.POINTS_PER_MM / widthPoints;
    int percent = (int) Math.max(LEAST_SCALE, Math.min(100, Math.floor(share * 100)));
    return scaled(percent);
  }

  Page scaled(int percent) {
    return new Page(paper, landscape, sideMm, sideMm, topMm, bottomMm, headerMm, percent);
  }

  /** The same page on which so wide a sheet is shrunk to the scale reckoned with. */
  Page narrowedFor(double widthPoints) {
    double printedMm = widthPoints / Measure.POINTS_PER_MM * scalePercent / 100;
    double right = Math.max(sideMm, acrossMm() - sideMm - printedMm);
    boolean shrunk = scalePercent < scaledTo(widthPoints).scalePercent();
    return shrunk
        ? new Page(paper, landscape, sideMm, right, topMm, bottomMm, headerMm, scalePercent)
        : this;
  }

  /** Height of a page for cells at its scale, in points of the sheet. */
  double innerPoints() {
    double millimetres = (landscape ? paper.widthMm : paper.heightMm) - topMm - bottomMm;
    return millimetres * Measure.POINTS_PER_MM * 100 / scalePercent;
  }

  private double acrossMm() {
    return landscape ? paper.heightMm : paper.widthMm;
  }
}
