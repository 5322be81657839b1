package sparewell.render;

import sparewell.table.LabelGrid;
import sparewell.units.LengthUnit;
import sparewell.units.UnitSystem;

/**
 * The page that a sheet is printed on, lengths in mm.
 *
 * @param headerMm distance of header and footer from the edge
 */
record Page(
    Paper paper, boolean landscape, double sideMm, double topMm, double bottomMm, double headerMm) {
  private static final double PORTRAIT_POINTS = 620;

  /** Blank edge that a printer needs at least. */
  private static final double LEAST_MARGIN_MM = 3.5;

  /** Room for rounding, so that the last row of labels is not pushed to the next page. */
  private static final double SLACK_MM = 1;

  /** Sizes of paper. */
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

  /** The paper usual where those units are. */
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
    return new Page(paper, false, side, top, top, 0);
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
    return new Page(usualPaper(units), widthPoints > PORTRAIT_POINTS, 13, 17, 16, 8);
  }
}
