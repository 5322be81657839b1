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
  /** For a run over a workbook with that many boxes that may move: proofs end where few can. */
  static Effort of(int boxes) {
    return new Effort(boxes <= 30 ? 4 : 6, boxes <= 30 ? 0.95 : 1, 2_000, 50_000, 1_500, 60_000);
  }
}
