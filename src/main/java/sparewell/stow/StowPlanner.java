package sparewell.stow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Findings;
import sparewell.season.Season;
import sparewell.stock.OnHand;
import sparewell.units.Length;

/**
 * Plans where the boxes go: light forward, heavy aft, within every limit, in few moves.
 *
 * <p>Each box that may be moved goes to one compartment aboard; the sum of weight x station is as
 * small as can be found, with a proven bound on what is possible. Limits: usable volume, max load
 * (loose stock counts), fit in some orientation, side moment of all tackle, boxes at hand in
 * compartments at hand, boxes that stay put.
 */
public final class StowPlanner {
  /** Share of the possible gain that the recommended number of moves must bring, percent. */
  private static final double WORTHWHILE_PERCENT = 80;

  private final Season season;
  private final AboardLoads aboard;
  private final StowSetup setup;
  private final StowProblem problem;

  private StowPlanner(Season season, OnHand onHand) {
    this.season = season;
    aboard = AboardLoads.of(season, onHand);
    setup = new StowSetup(season, aboard);
    problem = setup.problem;
  }

  /**
   * The plan; the same season and stock give the same plan on every machine.
   *
   * <p>Minimised: sum over boxes of weight x station, kg m, stations forward of the transom. Gain
   * of a plan: (moment now - its moment) / (moment now - best moment), percent. Gap: (its moment -
   * proven bound) / moment of all tackle, percent. Boxes in no compartment of the season, and those
   * ashore, are left out.
   */
  public static StowPlan plan(Season season, OnHand onHand) {
    return new StowPlanner(season, onHand).plan();
  }

  private StowPlan plan() {
    Findings findings = StowFindings.about(season, aboard, setup);
    StowSolver solver = new StowSolver(problem, Effort.standard(problem.boxCount));
    if (problem.boxCount == 0) {
      CurveRow settled =
          new CurveRow(
              0,
              standing(problem.now).centre(),
              OptionalDouble.of(100),
              OptionalDouble.of(0),
              true);
      return unmoved(findings, StowPlan.Outcome.NOTHING_TO_MOVE, settled);
    }
    StowSolver.Curve curve = solver.curve();
    if (!curve.best().found()) {
      int[] closest = solver.closest();
      findings.addAll(
          List.of(StowFindings.conflict(season, setup, closest, curve.best().proven())));
      CurveRow none = row(0, curve.best(), curve.best());
      return unmoved(findings, StowPlan.Outcome.NO_PLAN, none);
    }
    List<CurveRow> rows = new ArrayList<>();
    for (int k = 0; k < curve.rows().size(); k++) {
      rows.add(row(k, curve.rows().get(k), curve.best()));
    }
    int[] best = curve.best().array();
    int[] recommended = recommended(solver, curve);
    List<MoveOrder.Entry> order = MoveOrder.of(problem, recommended);
    StowPlan.Outcome outcome = order.isEmpty() ? StowPlan.Outcome.STAYS : StowPlan.Outcome.MOVE;
    return new StowPlan(
        aboard,
        BoxPlans.of(setup, recommended, Optional.of(best), order),
        rows,
        steps(order),
        outcome,
        standing(problem.now),
        standing(recommended),
        Optional.of(standing(best)),
        problem.moves(best),
        gapPercent(curve.best()),
        setup.sideTolerance * 1e-12,
        findings.list());
  }

  private StowPlan unmoved(Findings findings, StowPlan.Outcome outcome, CurveRow row) {
    Moment now = standing(problem.now);
    boolean settled = outcome == StowPlan.Outcome.NOTHING_TO_MOVE;
    return new StowPlan(
        aboard,
        BoxPlans.of(setup, problem.now, Optional.empty(), List.of()),
        List.of(row),
        List.of(),
        outcome,
        now,
        now,
        settled ? Optional.of(now) : Optional.empty(),
        0,
        0,
        setup.sideTolerance * 1e-12,
        findings.list());
  }

  /** The plan with the fewest moves that brings enough of the possible gain. */
  private int[] recommended(StowSolver solver, StowSolver.Curve curve) {
    int rows = curve.rows().size();
    for (int k = 0; k < rows; k++) {
      if (worthwhile(curve.rows().get(k), curve.best())) {
        return curve.rows().get(k).array();
      }
    }
    int[] found = curve.best().array();
    int[] last = curve.rows().get(rows - 1).array();
    int low = rows;
    int high = problem.moves(found);
    while (low < high) {
      int middle = (low + high) / 2;
      StowSolver.Answer answer = solver.row(middle, List.of(found, last));
      if (worthwhile(answer, curve.best())) {
        found = answer.array();
        high = Math.min(middle, problem.moves(found));
      } else {
        low = middle + 1;
      }
    }
    return found;
  }

  private boolean worthwhile(StowSolver.Answer answer, StowSolver.Answer best) {
    if (!answer.found()) {
      return false;
    }
    OptionalDouble gain = gain(answer, best);
    return gain.isEmpty() || gain.getAsDouble() >= WORTHWHILE_PERCENT - 1e-9;
  }

  private OptionalDouble gain(StowSolver.Answer answer, StowSolver.Answer best) {
    double now = problem.moment(problem.now) * 1e-12;
    double possible = now - best.moment();
    if (possible > StowSolver.tolerance(now)) {
      return OptionalDouble.of(100 * (now - answer.moment()) / possible);
    }
    return problem.feasible(problem.now) ? OptionalDouble.of(100) : OptionalDouble.empty();
  }

  private CurveRow row(int moves, StowSolver.Answer answer, StowSolver.Answer best) {
    if (!answer.found()) {
      return new CurveRow(
          moves, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), false);
    }
    Optional<Length> centre = standing(answer.array()).centre();
    return new CurveRow(
        moves, centre, gain(answer, best), OptionalDouble.of(gapPercent(answer)), true);
  }

  private double gapPercent(StowSolver.Answer answer) {
    double moment = Math.abs(answer.moment() + setup.fixedMoment * 1e-12);
    return moment == 0 ? 0 : 100 * (answer.moment() - answer.bound()) / moment;
  }

  private Moment standing(int[] places) {
    return new Moment(
        setup.tackleMassMg * 1e-6,
        (setup.fixedMoment + problem.moment(places)) * 1e-12,
        (setup.fixedSideMoment + problem.sideMoment(places)) * 1e-12);
  }

  private List<MoveStep> steps(List<MoveOrder.Entry> order) {
    List<MoveStep> steps = new ArrayList<>();
    for (MoveOrder.Entry entry : order) {
      steps.add(
          new MoveStep(
              entry.kind(),
              entry.number(),
              setup.box(entry.box()).name(),
              setup.places.get(entry.from()).name(),
              setup.places.get(entry.to()).name(),
              entry.other() < 0 ? "" : setup.box(entry.other()).name()));
    }
    return steps;
  }
}
