package sparewell.stow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.finding.Findings;
import sparewell.season.Box;
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

  /** The plan; the same season and stock give the same plan on every machine. */
  public static StowPlan plan(Season season, OnHand onHand) {
    return new StowPlanner(season, onHand).plan();
  }

  private StowPlan plan() {
    Findings findings = StowFindings.about(season, aboard, setup);
    StowSolver solver = new StowSolver(problem, Effort.standard(problem.boxCount));
    if (problem.boxCount == 0) {
      return unmoved(findings, StowPlan.Outcome.NOTHING_TO_MOVE, List.of());
    }
    StowSolver.Curve curve = solver.curve();
    if (!curve.best().found()) {
      int[] closest = solver.closest();
      findings.addAll(
          List.of(StowFindings.conflict(season, setup, closest, curve.best().proven())));
      CurveRow none = row(0, curve.best(), curve.best());
      return unmoved(findings, StowPlan.Outcome.NO_PLAN, List.of(none));
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
        boxPlans(recommended, Optional.of(best), order),
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

  private StowPlan unmoved(Findings findings, StowPlan.Outcome outcome, List<CurveRow> rows) {
    Standing now = standing(problem.now);
    boolean settled = outcome == StowPlan.Outcome.NOTHING_TO_MOVE;
    List<CurveRow> curve =
        settled
            ? List.of(
                new CurveRow(0, now.centre(), OptionalDouble.of(100), OptionalDouble.of(0), true))
            : rows;
    return new StowPlan(
        aboard,
        boxPlans(problem.now, Optional.empty(), List.of()),
        curve,
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
    int low = rows;
    int high = problem.moves(found);
    while (low < high) {
      int middle = (low + high) / 2;
      List<int[]> starts = new ArrayList<>(List.of(found));
      StowSolver.Answer before = curve.rows().get(rows - 1);
      if (before.found()) {
        starts.add(before.array());
      }
      StowSolver.Answer answer = solver.row(middle, starts);
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
    return answer.proven() || moment == 0
        ? 0
        : 100 * Math.max(0, answer.moment() - answer.bound()) / moment;
  }

  private Standing standing(int[] places) {
    return new Standing(
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
              boxOf(entry.box()).name(),
              setup.places.get(entry.from()).name(),
              setup.places.get(entry.to()).name(),
              entry.other() < 0 ? "" : boxOf(entry.other()).name()));
    }
    return steps;
  }

  private Box boxOf(int free) {
    return setup.boxes.get(setup.free.get(free));
  }

  private List<BoxPlan> boxPlans(
      int[] recommended, Optional<int[]> best, List<MoveOrder.Entry> order) {
    int[] step = new int[problem.boxCount];
    for (MoveOrder.Entry entry : order) {
      if (entry.number().isPresent()) {
        step[entry.box()] = entry.number().getAsInt();
        if (entry.other() >= 0) {
          step[entry.other()] = entry.number().getAsInt() + 1;
        }
      }
    }
    List<BoxPlan> plans = new ArrayList<>();
    for (int i = 0; i < setup.boxes.size(); i++) {
      Box box = setup.boxes.get(i);
      int free = setup.free.indexOf(i);
      String to = free < 0 ? box.compartment() : setup.places.get(recommended[free]).name();
      Optional<String> bestPlace =
          free < 0
              ? Optional.of(box.compartment())
              : best.map(places -> setup.places.get(places[free]).name());
      plans.add(
          new BoxPlan(
              box.name(),
              setup.loads.get(i).weight(),
              setup.loads.get(i).weightKnown(),
              box.compartment(),
              to,
              free >= 0 && step[free] > 0 ? OptionalInt.of(step[free]) : OptionalInt.empty(),
              bestPlace,
              reason(i, free, recommended, best),
              box.origin()));
    }
    return plans;
  }

  private String reason(int index, int free, int[] recommended, Optional<int[]> best) {
    Box box = setup.boxes.get(index);
    if (free < 0) {
      return box.staysPut() ? "stays put" : "fits into no compartment aboard";
    }
    int from = problem.now[free];
    int to = recommended[free];
    if (from == to) {
      if (best.isEmpty()) {
        return "no plan within all limits";
      }
      return best.get()[free] == from ? "stands well" : "moving it would gain little";
    }
    if (!StowSetup.fits(setup.places.get(from), box)) {
      return "does not fit where it is";
    }
    if (!problem.allowed[free][from]) {
      return "to be at hand";
    }
    int aft = Long.compare(problem.stationUm[from], problem.stationUm[to]);
    if (aft == 0) {
      return "for balance or room";
    }
    return aft > 0 ? "weight goes aft" : "makes room further aft";
  }
}
