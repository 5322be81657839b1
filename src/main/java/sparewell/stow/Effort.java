package sparewell.stow;

/**
 * How much is searched, counted in steps and not in seconds, so that the same workbook gives the
 * same plan on every machine.
 *
 * @param rounds coolings for the best plan
 * @param roundSteps steps of each of them
 * @param searchWork work of the exact search for the best plan; 10 million take about a second
 * @param rowSteps steps of the cooling for each row of the curve
 * @param rowWork work of the exact search for each row of the curve
 */
record Effort(int rounds, long roundSteps, long searchWork, long rowSteps, long rowWork) {
  /** For a run over a workbook: a second or so for a typical boat. */
  static final Effort STANDARD = new Effort(4, 200_000, 4_000_000, 100_000, 300_000);

  private static final int TYPICAL_BOXES = 20;

  /**
   * The effort for a boat: with more boxes every step takes longer, and more of them tell less.
   *
   * @param boxes boxes that may be moved
   */
  static Effort standard(int boxes) {
    if (boxes <= TYPICAL_BOXES) {
      return STANDARD;
    }
    double part = (double) TYPICAL_BOXES / boxes;
    return new Effort(
        STANDARD.rounds,
        (long) (STANDARD.roundSteps * part),
        (long) (STANDARD.searchWork * part),
        (long) (STANDARD.rowSteps * part),
        (long) (STANDARD.rowWork * part));
  }

  /** For the benchmark: up to 10 s of one core. */
  static final Effort LONG = new Effort(4, 1_000_000, 100_000_000, 100_000, 400_000);
}
