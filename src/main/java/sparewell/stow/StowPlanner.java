package sparewell.stow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Findings;
import sparewell.season.Compartment;
import sparewell.season.Season;
import sparewell.stock.OnHand;

/**
 * Plans where the boxes go: light forward, heavy aft, within every limit, in few moves.
 *
 * <p>Each box that may be moved goes to one compartment aboard; the sum of weight x station (and of
 * what reaching boxes is worth) is as small as can be found, with a proven bound on what is
 * possible. Limits: usable volume, max load (loose stock counts), fit in some orientation, side
 * moment of all tackle, boxes at hand in compartments at hand, boxes that stay put.
 */
public final class StowPlanner {
  /**
   * Gain that a move must bring: the tackle's centre comes aft by this share of the way from the
   * hindmost to the foremost compartment. Since the same charge counts on every run, a plan carried
   * out leaves nothing to ask for.
   */
  static final double MOVE_CHARGE = 0.015;

  private final Season season;
  private final AboardLoads aboard;
  private final StowSetup setup;
  private final StowProblem problem;

  private StowPlanner(Season season, OnHand onHand) {
    this.season = season;
    aboard = AboardLoads.of(season, onHand);
    setup = new StowSetup(season, aboard, onHand);
    problem = setup.problem;
  }

  /**
   * The plan; the same season and stock give the same plan on every machine, whatever the order of
   * their rows.
   *
   * <p>Minimised: sum over boxes of weight x station, kg m, stations forward of the transom, and of
   * tackle's weight x reach worth x minutes of reaching. Gain of a plan: (moment now - its moment)
   * / (moment now - best moment), percent. Gap: (its sum - proven bound) / moment of all tackle,
   * percent. Boxes in no compartment of the season, and those ashore, are left out.
   */
  public static StowPlan plan(Season season, OnHand onHand) {
    return new StowPlanner(season, onHand).plan();
  }

  private StowPlan plan() {
    Findings findings = StowFindings.about(season, aboard, setup);
    List<Compartment> outside = setup.outside();
    if (!outside.isEmpty()) {
      return unmoved(findings, Optional.of(new Refusal.Outside(outside)), List.of());
    }
    if (problem.boxCount() == 0) {
      StowFindings.side(season, setup, problem, findings);
      OptionalDouble all = OptionalDouble.of(100);
      CurveRow settled =
          new CurveRow(0, setup.standing(problem.now()).centre(), all, OptionalDouble.of(0), true);
      return unmoved(findings, Optional.empty(), List.of(settled));
    }
    for (StowProblem tried : problems()) {
      StowSolver solver = new StowSolver(tried, Effort.USUAL);
      StowSolver.Curve curve = solver.curve();
      if (curve.best().found()) {
        StowFindings.side(season, setup, tried, findings);
        return planned(solver, curve, findings);
      }
      if (tried.sideHighest() == StowProblem.UNLIMITED) {
        Refusal.Conflict conflict =
            new Refusal.Conflict(
                StowFindings.conflict(season, setup, solver.closest(), curve.best().proven()));
        findings.addAll(List.of(conflict.finding()));
        return unmoved(findings, Optional.of(conflict), List.of(row(0, curve.best(), curve)));
      }
    }
    throw new IllegalStateException("the last problem has no side limit");
  }

  /**
   * The problem; then with no worse a pull to the side than now; then whatever the pull: the side
   * tolerance alone never stands in the way of a plan. A pull a little over the usual tolerance is
   * worth no move: the second problem comes first.
   */
  private List<StowProblem> problems() {
    long pull = setup.pullNow();
    List<StowProblem> tries = new ArrayList<>();
    if (!setup.pullsLittle()) {
      tries.add(problem);
    }
    if (pull > setup.sideTolerance) {
      tries.add(problem.withSides(-pull - setup.fixedSideMoment, pull - setup.fixedSideMoment));
    }
    tries.add(problem.withSides(-StowProblem.UNLIMITED, StowProblem.UNLIMITED));
    return tries;
  }

  private StowPlan planned(StowSolver solver, StowSolver.Curve curve, Findings findings) {
    List<CurveRow> rows = new ArrayList<>();
    for (int k = 0; k < curve.rows().size(); k++) {
      rows.add(row(k, curve.rows().get(k), curve));
    }
    int[] best = curve.best().array();
    int[] recommended =
        solver.worthwhile(MOVE_CHARGE * setup.spanMetres() * setup.tackleMassMg * 1e-6);
    List<MoveStep> steps =
        MoveOrder.of(
            problem,
            recommended,
            setup.free.stream().map(index -> setup.boxes.get(index).name()).toList(),
            setup.places.stream().map(Compartment::name).toList());
    return new StowPlan(
        aboard,
        BoxPlans.of(setup, recommended, Optional.of(best), steps, Reason.NO_PLAN),
        rows,
        steps,
        steps.isEmpty() ? StowPlan.Outcome.STAYS : StowPlan.Outcome.MOVE,
        Optional.empty(),
        setup.standing(problem.now()),
        setup.standing(recommended),
        Optional.of(setup.standing(best)),
        problem.moves(best),
        gapPercent(curve.best()),
        reach(recommended),
        setup.sideTolerance * 1e-12,
        findings.list());
  }

  private StowPlan unmoved(Findings findings, Optional<Refusal> refusal, List<CurveRow> curve) {
    Moment now = setup.standing(problem.now());
    boolean outside = refusal.filter(Refusal.Outside.class::isInstance).isPresent();
    Reason reason = outside ? Reason.WITHHELD : Reason.NO_PLAN;
    return new StowPlan(
        aboard,
        BoxPlans.of(setup, problem.now(), Optional.empty(), List.of(), reason),
        curve,
        List.of(),
        refusal.isPresent() ? StowPlan.Outcome.REFUSED : StowPlan.Outcome.NOTHING_TO_MOVE,
        refusal,
        now,
        now,
        refusal.isPresent() ? Optional.empty() : Optional.of(now),
        0,
        0,
        reach(problem.now()),
        setup.sideTolerance * 1e-12,
        findings.list());
  }

  private Optional<StowPlan.ReachChange> reach(int[] recommended) {
    OptionalDouble now = setup.reach(problem.now());
    return now.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new StowPlan.ReachChange(now.getAsDouble(), setup.reach(recommended).getAsDouble()));
  }

  private CurveRow row(int moves, StowSolver.Answer answer, StowSolver.Curve curve) {
    if (!answer.found()) {
      return new CurveRow(
          moves, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), false);
    }
    Moment there = setup.standing(answer.array());
    return new CurveRow(
        moves, there.centre(), gain(there, curve), OptionalDouble.of(gapPercent(answer)), true);
  }

  private OptionalDouble gain(Moment there, StowSolver.Curve curve) {
    double now = setup.standing(problem.now()).momentKgM();
    double possible = now - setup.standing(curve.best().array()).momentKgM();
    if (possible > StowSolver.tolerance(now)) {
      return OptionalDouble.of(100 * (now - there.momentKgM()) / possible);
    }
    return curve.rows().get(0).found() ? OptionalDouble.of(100) : OptionalDouble.empty();
  }

  private double gapPercent(StowSolver.Answer answer) {
    double moment = Math.abs(setup.standing(answer.array()).momentKgM());
    return moment == 0 ? 0 : 100 * (answer.cost() - answer.bound()) / moment;
  }
}
