package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sparewell.ooxml.WorkbookPackage;
import sparewell.season.Season;
import sparewell.stock.OnHandCalculator;
import sparewell.workbook.read.ReadOptions;
import sparewell.workbook.read.SeasonReader;

/**
 * The demo boat against what anglers do: terminal tackle and jigs aft, light hard baits forward
 * (common practice, no source). With no limit at all every box would go as far aft as it fits, so
 * room is left as the only limit: it sends forward what weighs little for its size.
 */
class DemoStowTest {
  private static final List<String> HEAVY =
      List.of("Weights", "Hooks", "Football jigs", "Flipping jigs", "Finesse jigs");
  private static final List<String> HARD_BAITS =
      List.of("Squarebills", "Lipless", "Divers", "Jerkbaits", "Walkers", "Poppers");

  private StowSetup setup;

  @BeforeEach
  void readsTheDemo() throws Exception {
    ReadOptions options =
        new ReadOptions(
            Optional.empty(), LocalDate.of(2026, 3, 1), Optional.empty(), Optional.empty());
    try (WorkbookPackage book = WorkbookPackage.open(Path.of("workbook-templates/demo.xlsx"))) {
      Season season = SeasonReader.read(book, options).season();
      setup = new StowSetup(season, AboardLoads.of(season, OnHandCalculator.of(season)));
    }
  }

  @Test
  void roomAloneSendsTheHeavyAftAndTheLightForward() {
    follows(best(setup.problem.without(true, false, true)));
  }

  @Test
  void soDoesThePlanWithinAllLimits() {
    follows(best(setup.problem));
  }

  @Test
  void withoutAnyLimitAllGoesAft() {
    int[] place = best(setup.problem.without(true, true, true));
    for (int box = 0; box < place.length; box++) {
      for (int other = 0; other < setup.problem.placeCount; other++) {
        assertTrue(
            !setup.problem.allowed[box][other]
                || setup.problem.stationUm[other] >= setup.problem.stationUm[place[box]],
            name(box));
      }
    }
  }

  private int[] best(StowProblem problem) {
    return new StowSolver(problem, Effort.standard(problem.boxCount)).best().array();
  }

  private void follows(int[] place) {
    double aftmost = Double.POSITIVE_INFINITY;
    for (long station : setup.problem.stationUm) {
      aftmost = Math.min(aftmost, station);
    }
    for (String heavy : HEAVY) {
      assertEquals(aftmost, setup.problem.stationUm[place[box(heavy)]], heavy);
    }
    double forward = mean(HARD_BAITS, box -> setup.problem.stationUm[place[box]]);
    assertTrue(forward > aftmost, "some hard baits stand ahead of the heavy boxes");
    List<String> moved =
        HARD_BAITS.stream()
            .filter(bait -> setup.problem.stationUm[place[box(bait)]] > forward)
            .toList();
    List<String> aft = HARD_BAITS.stream().filter(bait -> !moved.contains(bait)).toList();
    assertTrue(mean(moved, this::density) < mean(aft, this::density), "the lighter ones: " + moved);
  }

  private double density(int box) {
    return (double) setup.problem.weightMg[box] / setup.problem.volumeMm3[box];
  }

  private double mean(List<String> names, ToDoubleFunction<Integer> value) {
    return names.stream()
        .mapToDouble(name -> value.applyAsDouble(box(name)))
        .average()
        .orElseThrow();
  }

  private int box(String name) {
    for (int box = 0; box < setup.problem.boxCount; box++) {
      if (name(box).equals(name)) {
        return box;
      }
    }
    throw new IllegalArgumentException(name);
  }

  private String name(int box) {
    return setup.box(box).name();
  }
}
