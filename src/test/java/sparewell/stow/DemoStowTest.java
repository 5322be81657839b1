package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.ooxml.WorkbookPackage;
import sparewell.season.Box;
import sparewell.season.Season;
import sparewell.season.SeasonSketch;
import sparewell.stock.OnHand;
import sparewell.stock.OnHandCalculator;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.read.SeasonReader;

/**
 * The demo boat against what anglers do: terminal tackle and jigs aft, light hard baits forward
 * (common practice, no source). Aft and forward of the middle, that is, halfway between the
 * hindmost and the foremost compartment, as in the notes on the load sheet.
 *
 * <p>With no limit at all every box would go as far aft as it fits. So all limits but room are
 * lifted: most loads, the side moment, what must be at hand, what stays put. Room (usable volume
 * and the size of the box) is left, as there is but one boat: it sends forward what weighs little
 * for its size.
 */
class DemoStowTest {
  private static final List<String> TERMINAL_AND_JIGS =
      List.of("Weights", "Hooks", "Football jigs", "Flipping jigs", "Finesse jigs", "Bladed jigs");
  private static final List<String> HARD_BAITS =
      List.of("Squarebills", "Lipless", "Divers", "Jerkbaits", "Walkers", "Poppers");
  private static final double FILL_FACTOR = 0.85;

  @ParameterizedTest
  @ValueSource(strings = {"demo.xlsx", "demo-metric.xlsx"})
  void roomAloneSendsTheHeavyAftAndTheLightForward(String book) throws Exception {
    Demo demo = Demo.read(book, true);
    demo.followsPractice(proven(demo.onlyRoom()).array());
  }

  /**
   * Not by a hair: so it is with a quarter less room in every compartment, and with a sixth more.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.65, 0.7, 0.75, 0.8, 0.9, 0.95, 1})
  void soItDoesWithLessRoomAndWithMore(double fillFactor) throws Exception {
    Demo demo = Demo.read("demo.xlsx", true);
    StowProblem room = demo.onlyRoom();
    demo.followsPractice(searched(withRoom(room, fillFactor / FILL_FACTOR)).array());
  }

  /**
   * Proof beside the plan: with any one of these boxes on the wrong side, the forward moment of all
   * boxes is at least 0.4 % more: a bound, which needs no plan.
   */
  @Test
  void noPlanAgainstPracticeIsAsGood() throws Exception {
    Demo demo = Demo.read("demo.xlsx", true);
    StowProblem room = demo.onlyRoom();
    double best = proven(room).cost();
    for (String box : TERMINAL_AND_JIGS) {
      double other = bound(demo.keptTo(room, box, true));
      assertTrue(other > 1.004 * best, box + " forward: " + other + " beside " + best);
    }
    for (String box : HARD_BAITS) {
      double other = bound(demo.keptTo(room, box, false));
      assertTrue(other > 1.004 * best, box + " aft: " + other + " beside " + best);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"demo.xlsx", "demo-metric.xlsx"})
  void soDoesThePlanWithinAllLimits(String book) throws Exception {
    Demo demo = Demo.read(book, false);
    demo.followsPractice(demo.best(demo.setup.problem));
  }

  @Test
  void withoutAnyLimitAllGoesAft() throws Exception {
    Demo demo = Demo.read("demo.xlsx", true);
    StowProblem problem = withoutSides(demo.setup.problem.without(true, true));
    int[] place = demo.best(problem);
    for (int box = 0; box < place.length; box++) {
      for (int other = 0; other < problem.placeCount(); other++) {
        assertTrue(
            !problem.allowed(box, other) || demo.stationUm(other) >= demo.stationUm(place[box]),
            demo.setup.box(box).name());
      }
    }
  }

  private static StowProblem withoutSides(StowProblem problem) {
    return problem.withSides(-StowProblem.UNLIMITED, StowProblem.UNLIMITED);
  }

  private static StowSolver.Answer solve(StowProblem problem) {
    return new StowSolver(problem, Effort.USUAL).best();
  }

  private static double bound(StowProblem problem) {
    Effort effort = new Effort(20_000, 1, 20_000, 300_000, 0, 0);
    ProblemChange stowed = new ProblemChange(problem);
    // from the best plan nothing is left to gain, so that no gap is near enough
    stowed.now = new StowSolver(problem, effort).best().array();
    return new StowSolver(stowed.made(), effort).best().bound();
  }

  /** Proven best. */
  private static StowSolver.Answer proven(StowProblem problem) {
    StowSolver.Answer answer = searched(problem);
    assertTrue(answer.proven(), "proven");
    return answer;
  }

  /** With more work on the proof than a run's where that is needed, which ends with the proof. */
  private static StowSolver.Answer searched(StowProblem problem) {
    return new StowSolver(problem, new Effort(2_000_000, 1, 5_000_000, 20_000_000, 0, 0)).best();
  }

  /** The same problem with so many times the volume for the boxes in every compartment. */
  private static StowProblem withRoom(StowProblem problem, double times) {
    ProblemChange change = new ProblemChange(problem);
    Arrays.setAll(
        change.volumeRoomMm3, place -> Math.round(problem.volumeRoomMm3()[place] * times));
    return change.made();
  }

  /** The demo as a stowing problem, and where its middle lies. */
  private record Demo(StowSetup setup, double middleUm) {
    /**
     * Reads a demo workbook.
     *
     * @param free whether no box need be at hand nor stay put
     */
    static Demo read(String book, boolean free) throws Exception {
      ReadOptions options = ReadOptions.on(LocalDate.of(2026, 3, 1));
      try (WorkbookPackage parts = WorkbookPackage.open(Path.of("workbook-templates", book))) {
        Season season = SeasonReader.read(parts, options).season();
        assertEquals(FILL_FACTOR, season.settings().fillFactorShare());
        OnHand onHand = OnHandCalculator.of(season);
        StowSetup setup =
            new StowSetup(free ? freed(season) : season, AboardLoads.of(season, onHand), onHand);
        long[] stations =
            setup.places.stream()
                .mapToLong(at -> at.fromTransom().micrometres())
                .sorted()
                .toArray();
        return new Demo(setup, (stations[0] + stations[stations.length - 1]) / 2.0);
      }
    }

    private static Season freed(Season season) {
      List<Box> boxes =
          season.boxes().stream()
              .map(
                  box ->
                      new Box(
                          box.name(),
                          box.compartment(),
                          box.size(),
                          box.emptyWeight(),
                          box.tapeColour(),
                          false,
                          false,
                          box.lastChecked(),
                          box.checkEveryDays(),
                          box.origin()))
              .toList();
      SeasonSketch sketch = SeasonSketch.of(season);
      sketch.boxes = boxes;
      return sketch.season();
    }

    StowProblem onlyRoom() {
      assertEquals(setup.boxes.size(), setup.problem.boxCount(), "every box may be moved");
      return withoutSides(setup.problem.without(true, false));
    }

    int[] best(StowProblem problem) {
      return solve(problem).array();
    }

    void followsPractice(int[] place) {
      for (String box : TERMINAL_AND_JIGS) {
        assertTrue(stationUm(place, box) < middleUm, box + " stands forward");
      }
      for (String box : HARD_BAITS) {
        assertTrue(stationUm(place, box) > middleUm, box + " stands aft");
      }
    }

    /** The same problem with one box kept to the compartments forward or aft of the middle. */
    StowProblem keptTo(StowProblem problem, String name, boolean forward) {
      ProblemChange change = new ProblemChange(problem);
      double[] places = change.cost[index(name)];
      for (int at = 0; at < places.length; at++) {
        places[at] = stationUm(at) > middleUm == forward ? places[at] : Double.POSITIVE_INFINITY;
      }
      return change.made();
    }

    private long stationUm(int[] place, String box) {
      return stationUm(place[index(box)]);
    }

    long stationUm(int at) {
      return setup.places.get(at).fromTransom().micrometres();
    }

    private int index(String name) {
      for (int box = 0; box < setup.problem.boxCount(); box++) {
        if (setup.box(box).name().equals(name)) {
          return box;
        }
      }
      throw new IllegalArgumentException(name);
    }
  }
}
