package sparewell.stow;

/**
 * How much is searched, counted in steps and not in seconds, so that the same workbook gives the
 * same plan on every machine.
 *
 * @param rounds coolings for the best plan
 * @param roundSteps steps of each of them; a million take about 50 ms
 * @param searchWork work of the exact search for the best plan; 10 million take about a second
 * @param rowSteps steps of the coolings for each row of the curve
 * @param rowWork work of the exact search for each row of the curve
 */
record Effort(int rounds, long roundSteps, long searchWork, long rowSteps, long rowWork) {
  /**
   * For a run over a workbook: a tenth of a second for a typical boat.
   *
   * @param boxes boxes that may be moved; each adds to the plans to be tried
   */
  static Effort standard(int boxes) {
    return new Effort(4, 4_000L * boxes, 1_200_000, 1_500L * boxes, 120_000);
  }
}
