package sparewell.stow;

/**
 * How much is searched, counted in steps and not in seconds, so that the same workbook gives the
 * same plan on every machine. Stage follows stage with twice the cooling and three times the exact
 * search until the plan is proven best: an easy boat costs little, a hard one gets more.
 *
 * @param stages most stages for the best plan
 * @param cooling branches that the annealing of the first stage looks at
 * @param exact work of the exact search in the first stage
 * @param rowCooling branches that the annealing looks at for each row of the curve
 * @param rowExact work of the exact search for each row of the curve
 */
record Effort(int stages, long cooling, long exact, long rowCooling, long rowExact) {
  /** For a run over a workbook. */
  static final Effort USUAL = new Effort(6, 500_000, 50_000, 200_000, 300_000);

  /** To find out whether there is a plan at all. */
  static final Effort FEASIBLE = new Effort(1, 200_000, 0, 0, 0);
}
