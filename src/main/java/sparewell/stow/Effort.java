package sparewell.stow;

/**
 * How much is searched, counted in steps and not in seconds, so that the same workbook gives the
 * same plan on every machine. Stage follows stage with twice the steps and four times the work
 * until the plan is proven best: an easy boat costs little, a hard one gets more.
 *
 * @param stages most stages for the best plan
 * @param stalledShare a stage that leaves more than this share of the gap, and finds no better
 *     plan, is the last; 1 for all stages
 * @param steps changes proposed by the cooling of the first stage, for each box
 * @param work work of the exact search in the first stage
 * @param rowSteps changes proposed for each row of the curve, for each box
 * @param rowWork work of the exact search for each row of the curve
 */
record Effort(int stages, double stalledShare, long steps, long work, long rowSteps, long rowWork) {
  /**
   * For a run over a workbook.
   *
   * @param boxes that may be moved: few are proven best soon, or not at all; many take longer a
   *     step
   */
  static Effort of(int boxes) {
    return boxes <= 30
        ? new Effort(4, 0.95, 2_000, 50_000, 1_500, 60_000)
        : new Effort(boxes <= 50 ? 6 : 5, 1, 4_000, 50_000, 1_500, 60_000);
  }
}
