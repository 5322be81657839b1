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

  /** For the benchmark: up to 10 s of one core. */
  static final Effort LONG = new Effort(4, 1_000_000, 100_000_000, 100_000, 400_000);
}
