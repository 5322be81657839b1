package sparewell.stow;

/**
 * Effort of the search, counted in steps and not in seconds, so that the same workbook gives the
 * same plan on every machine. A short annealing and a branch and bound prove an easy boat's plan; a
 * hard one is annealed slowly, several times, and bounded twice more.
 *
 * @param first branches that the first annealing looks at
 * @param coolings slow coolings where the plan is not proven near the best; 0: no second search
 * @param cooling branches that each of them looks at
 * @param exact work of branch and bound, each time
 * @param rowCooling branches that the annealing looks at for each row of the curve
 * @param rowExact work of branch and bound for each row of the curve
 */
record Effort(long first, int coolings, long cooling, long exact, long rowCooling, long rowExact) {
  /** For a run over a workbook. */
  static final Effort USUAL = new Effort(30_000, 3, 15_000_000, 3_000_000, 30_000, 300_000);

  /** To find out whether there is a plan at all. */
  static final Effort FEASIBLE = new Effort(200_000, 0, 0, 0, 0, 0);
}
