package sparewell.stow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Bounds and struck out places against every plan of small problems. */
class DualBoundTest {
  private static final double CLOSE = 1e-7;

  @Test
  void boundsOfTheRelaxationsLieUnderEveryPlan() {
    for (int seed = 0; seed < 60; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] least = ExhaustiveSearch.leastByMoves(problem);
      double best = least[problem.boxCount];
      if (best == Double.POSITIVE_INFINITY) {
        continue;
      }
      double linear = new LinearBound(problem).ascend(problem.allowed, best, 500);
      double priced = new DualBound(problem).ascend(problem.allowed, best, 200, 1.0);
      assertTrue(linear <= best + CLOSE, "linear bound, seed " + seed);
      assertTrue(priced <= best + CLOSE, "priced places, seed " + seed);
      for (int k = 1; k < problem.boxCount; k++) {
        if (least[k] < Double.POSITIVE_INFINITY) {
          DualBound dual = new DualBound(problem);
          dual.mostMoves(k);
          double few = dual.ascend(problem.allowed, least[k], 200, 1.0);
          assertTrue(few <= least[k] + CLOSE, "priced moves, seed " + seed);
        }
      }
    }
  }

  @Test
  void pricedPlacesAreTighterThanLinearPrices() {
    double shortOfBest = 0;
    double linearShort = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double best = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount];
      if (best < Double.POSITIVE_INFINITY) {
        double linear = new LinearBound(problem).ascend(problem.allowed, best, 2_000);
        double priced = new DualBound(problem).ascend(problem.allowed, best, 400, 1.0);
        double usual = new PlaceCosts(problem).spread();
        assertTrue(priced > linear - 0.02 * usual, "seed " + seed);
        shortOfBest += (best - priced) / usual;
        linearShort += (best - linear) / usual;
      }
    }
    assertTrue(shortOfBest < 0.7 * linearShort, shortOfBest + " against " + linearShort);
  }

  @Test
  void leavesTheBestPricesInForce() {
    for (int seed = 0; seed < 40; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      DualBound dual = new DualBound(problem);
      dual.mostMoves(seed % 3 - 1);
      for (int steps : new int[] {1, 7, 60, 300}) {
        double best = dual.ascend(problem.allowed, 1e4, steps, 1.0);
        assertEquals(best, dual.evaluate(problem.allowed), 1e-9 * Math.abs(best) + 1e-12);
      }
      assertTrue(dual.movePrice() == 0 || seed % 3 > 0);
      double[] kept = dual.prices();
      double bound = dual.evaluate(problem.allowed);
      dual.ascend(problem.allowed, 1e5, 3, 1.0);
      dual.prices(kept);
      assertEquals(bound, dual.evaluate(problem.allowed), 0, "prices taken up again");
    }
  }

  @Test
  void aPriceOfMovesHoldsOnlyWhereTheyAreCounted() {
    StowProblem problem = RandomProblems.of(3);
    DualBound dual = new DualBound(problem);
    double free = dual.evaluate(problem.allowed);
    double[] prices = dual.prices();
    prices[prices.length - 1] = 2;
    dual.prices(prices);
    assertEquals(0, dual.movePrice());
    dual.mostMoves(1);
    dual.prices(prices);
    assertEquals(2, dual.movePrice());
    dual.mostMoves(-1);
    assertEquals(0, dual.movePrice());
    assertEquals(free, dual.evaluate(problem.allowed), 0);
  }

  @Test
  void sharesTellHowOftenAPlaceTookABox() {
    StowProblem problem = RandomProblems.of(2);
    DualBound dual = new DualBound(problem);
    dual.ascend(problem.allowed, 1e4, 1, 1.0);
    for (int box = 0; box < problem.boxCount; box++) {
      for (int at = 0; at < problem.placeCount; at++) {
        double first = dual.share(box, at);
        assertTrue(first == 0 || first == 1, "after one evaluation: " + first);
      }
    }
    dual.ascend(problem.allowed, 1e4, 50, 1.0);
    int between = 0;
    for (int box = 0; box < problem.boxCount; box++) {
      for (int at = 0; at < problem.placeCount; at++) {
        double share = dual.share(box, at);
        assertTrue(share >= 0 && share <= 1);
        assertTrue(share == 0 || problem.allowed[box][at]);
        between += share > 0 && share < 1 ? 1 : 0;
      }
    }
    assertTrue(between > 0, "places took boxes now and then: " + between);
  }

  @Test
  void strikesOutWhatNoBetterPlanUsesAndNothingElse() {
    int struckInAll = 0;
    for (int seed = 0; seed < 100; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double best = ExhaustiveSearch.leastByMoves(problem)[problem.boxCount];
      if (best == Double.POSITIVE_INFINITY) {
        continue;
      }
      boolean[][] allowed = RandomProblems.open(problem);
      DualBound dual = new DualBound(problem);
      dual.ascend(allowed, best, 50, 1.0);
      int struck = dual.strikeOut(allowed, best + 1e-6);
      assertEquals(count(problem.allowed) - count(allowed), struck);
      struckInAll += struck;
      StowProblem left = RandomProblems.with(problem, allowed);
      assertEquals(best, ExhaustiveSearch.leastByMoves(left)[problem.boxCount], CLOSE);
      // What is left open is not known to lead over the target.
      PricedPlaces places = priced(problem, dual);
      double bound = places.evaluate(problem.allowed, -1);
      for (int box = 0; box < problem.boxCount; box++) {
        if (!places.fixed(box)) {
          double[] forced = places.forced(problem.allowed, bound, box);
          for (int at = 0; at < forced.length; at++) {
            assertTrue(!allowed[box][at] || forced[at] < best + 1e-6 + CLOSE);
          }
        }
      }
    }
    assertTrue(struckInAll > 150, "struck out " + struckInAll);
  }

  /** One box, worth 2 before any ascent: 1 kg m in the first place, 3 kg m in the second. */
  private static StowProblem oneBox() {
    long none = StowProblem.UNLIMITED;
    return new StowProblem(
        new long[] {1_000_000},
        new long[] {1_000_000},
        new long[] {1_000_000, 3_000_000},
        new long[] {0, 0},
        new long[] {none, none},
        new long[] {none, none},
        new boolean[][] {{true, true}},
        new int[] {0},
        -none,
        none);
  }

  @Test
  void aBoxStandsInThePlaceThatIsWorthIt() {
    StowProblem problem = oneBox();
    DualBound dual = new DualBound(problem);
    assertEquals(0, dual.work());
    assertEquals(1, dual.ascend(problem.allowed, 4, 1, 1.0), CLOSE);
    assertEquals(1, dual.share(0, 0));
    assertEquals(0, dual.share(0, 1));
    assertTrue(dual.work() > 0);
  }

  @Test
  void theAscentEndsWhereNothingIsShort() {
    StowProblem problem = oneBox();
    DualBound once = new DualBound(problem);
    once.ascend(problem.allowed, 4, 1, 1.0);
    DualBound often = new DualBound(problem);
    often.ascend(problem.allowed, 4, 1_000, 1.0);
    assertEquals(once.work(), often.work());
  }

  @Test
  void aPlaceThatReachesTheTargetJustSoIsStruckOut() {
    StowProblem problem = oneBox();
    DualBound dual = new DualBound(problem);
    boolean[][] allowed = RandomProblems.open(problem);
    dual.evaluate(allowed);
    assertEquals(0, dual.strikeOut(allowed, 3 + CLOSE));
    assertEquals(1, dual.strikeOut(allowed, 3));
    assertTrue(allowed[0][0] && !allowed[0][1]);
  }

  @Test
  void pricesStartAtTheMeanMomentOfTheOpenPlaces() {
    for (int seed = 0; seed < 20; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      double[] prices = new DualBound(problem).prices();
      for (int box = 0; box < problem.boxCount; box++) {
        double weight = problem.weightMg[box] * 1e-6;
        boolean[] open = problem.allowed[box];
        double station =
            IntStream.range(0, problem.placeCount)
                .filter(at -> open[at])
                .mapToLong(at -> problem.stationUm[at])
                .average()
                .orElseThrow();
        assertEquals(weight * station * 1e-6, prices[box], CLOSE);
      }
      assertEquals(0, prices[problem.boxCount], "side");
      assertEquals(0, prices[problem.boxCount + 1], "moves");
    }
  }

  @Test
  void noMovesAtAllAreCountedToo() {
    int tight = 0;
    int stays = 0;
    for (int seed = 0; seed < 200; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      if (problem.feasible(problem.now)) {
        DualBound dual = new DualBound(problem);
        dual.mostMoves(0);
        double moment = problem.moment(problem.now) * 1e-12;
        double bound = dual.ascend(problem.allowed, moment, 300, 1.0);
        assertTrue(bound <= moment + CLOSE, "seed " + seed);
        double kept = dual.movePrice();
        dual.mostMoves(0);
        assertEquals(kept, dual.movePrice());
        stays++;
        tight += bound > moment - 0.01 * new PlaceCosts(problem).spread() ? 1 : 0;
      }
    }
    assertTrue(stays > 2, "may stay: " + stays);
    assertEquals(stays, tight);
  }

  /** Each ascent goes its own way; only prices are taken on. */
  @Test
  void anAscentForgetsTheOneBefore() {
    for (int seed = 0; seed < 40; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      DualBound fresh = new DualBound(problem);
      double[] start = fresh.prices();
      DualBound used = new DualBound(problem);
      used.ascend(problem.allowed, 1e4, 5, 1.0);
      used.prices(start);
      double first = fresh.ascend(problem.allowed, 1e4, 4, 1.0);
      double second = used.ascend(problem.allowed, 1e4, 4, 1.0);
      assertEquals(first, second, CLOSE * Math.abs(first), "seed " + seed);
    }
  }

  @Test
  void setsSearchedLessExactlyGiveALowerBound() {
    int lower = 0;
    for (int seed = 0; seed < 40; seed++) {
      StowProblem problem = RandomProblems.of(seed);
      DualBound dual = new DualBound(problem);
      double exact = dual.evaluate(problem.allowed);
      dual.knapsackTolerance(3);
      double loose = dual.evaluate(problem.allowed);
      assertTrue(loose <= exact + CLOSE, "seed " + seed);
      assertTrue(loose >= exact - 3 * problem.placeCount - CLOSE, "seed " + seed);
      lower += loose < exact - CLOSE ? 1 : 0;
    }
    assertTrue(lower > 20, "lower in " + lower + " of 40");
  }

  /** How far below the best plan bounds end, in usual boxes: what the steps are worth. */
  @Test
  void fewStepsLeadNearTheBestBound() {
    double early = 0;
    double late = 0;
    double counted = 0;
    for (int seed = 1; seed <= 30; seed++) {
      StowProblem problem = StowCases.problem(9, 4, seed);
      int few = 1 + seed % 3;
      double best = proven(problem, -1);
      double usual = new PlaceCosts(problem).spread();
      early += (best - new DualBound(problem).ascend(problem.allowed, best, 25, 1.0)) / usual;
      late += (best - new DualBound(problem).ascend(problem.allowed, best, 300, 1.0)) / usual;
      DualBound dual = new DualBound(problem);
      dual.mostMoves(few);
      double least = proven(problem, few);
      if (least < CEILING) {
        counted += (least - dual.ascend(problem.allowed, least, 150, 1.0)) / usual;
      }
    }
    assertTrue(early < 30 * 0.223, "after 25 steps: " + early);
    assertTrue(late < 30 * 0.105, "after 300 steps: " + late);
    assertTrue(counted < 30 * 0.127, "moves counted, 150 steps: " + counted);
  }

  private static final double CEILING = 1e4;

  private static double proven(StowProblem problem, int mostMoves) {
    Annealing plans = new Annealing(problem, mostMoves);
    return new BranchAndBound(problem, CEILING).search(mostMoves, plans, 20_000_000);
  }

  private static PricedPlaces priced(StowProblem problem, DualBound dual) {
    Prices prices = new Prices(new double[problem.boxCount], 1);
    prices.take(dual.prices());
    return new PricedPlaces(problem, prices);
  }

  private static int count(boolean[][] open) {
    int count = 0;
    for (boolean[] row : open) {
      for (boolean one : row) {
        count += one ? 1 : 0;
      }
    }
    return count;
  }

  @Test
  void wherePlansAreNotWantedNoneIsLeft() {
    StowProblem problem = RandomProblems.of(4);
    boolean[][] allowed = RandomProblems.open(problem);
    assertEquals(-1, new DualBound(problem).strikeOut(allowed, -1e9));
    assertEquals(0, new DualBound(problem).strikeOut(RandomProblems.open(problem), 1e9));
    boolean[][] none = RandomProblems.open(problem);
    Arrays.fill(none[0], false);
    DualBound dual = new DualBound(problem);
    assertEquals(Double.POSITIVE_INFINITY, dual.evaluate(none));
    assertEquals(Double.POSITIVE_INFINITY, dual.ascend(none, 1e4, 5, 1.0));
  }
}
