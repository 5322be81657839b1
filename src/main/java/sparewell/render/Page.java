package sparewell.render;

import sparewell.units.UnitSystem;

/**
 * The page that a sheet is printed on, lengths in mm.
 *
 * @param headerMm distance of header and footer from the edge
 */
record Page(
    Paper paper, boolean landscape, double sideMm, double topMm, double bottomMm, double headerMm) {
  private static final double PORTRAIT_POINTS = 620;

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

  /** A page on which so wide a sheet is shrunk to the width, lying where it is wide. */
  static Page fitting(double widthPoints, UnitSystem units) {
    return new Page(usualPaper(units), widthPoints > PORTRAIT_POINTS, 13, 17, 16, 8);
  }
}
