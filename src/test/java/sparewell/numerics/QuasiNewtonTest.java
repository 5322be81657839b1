package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Hills whose tops are known. */
class QuasiNewtonTest {
  private static final ToDoubleFunction<double[]> VALLEY =
      x -> -Math.pow(x[0] - 1, 2) - 10 * Math.pow(x[1] - x[0] * x[0], 2);

  /** Top 5 at (3, -2); minus the second derivatives are (4, 1; 1, 2). */
  private static final ToDoubleFunction<double[]> BOWL =
      x -> {
        double u = x[0] - 3;
        double v = x[1] + 2;
        return 5 - 2 * u * u - u * v - v * v;
      };

  @Test
  void climbsToTheTopOfAKnownHill() {
    QuasiNewton top = QuasiNewton.maximise(VALLEY, new double[] {-0.5, 0.8}, 1e-12, 200);
    assertTrue(top.converged());
    assertArrayEquals(new double[] {1, 1}, top.at(), 1e-4);
    assertEquals(0, top.value(), 1e-8);
  }

  // One-sided differences alone would miss the top by half their step, 1e-4.
  @Test
  void aFineClimbEndsOnTheTop() {
    QuasiNewton top = QuasiNewton.maximise(BOWL, new double[] {0, 0}, 1e-9, 100);
    assertTrue(top.converged());
    assertArrayEquals(new double[] {3, -2}, top.at(), 3e-5);
    assertEquals(5, top.value(), 1e-8);
    assertTrue(top.iterations() > 2 && top.iterations() < 30, "iterations " + top.iterations());
  }

  @Test
  void aRoughClimbEndsNearTheTop() {
    QuasiNewton top = QuasiNewton.maximise(BOWL, new double[] {-4, 6}, 0.05, 100);
    assertTrue(top.converged());
    assertEquals(5, top.value(), 0.2);
  }

  @Test
  void aGoodGuessOfTheCurvatureLeadsStraightUp() {
    // The inverse of (4, 1; 1, 2).
    double[][] guess = {{2 / 7.0, -1 / 7.0}, {-1 / 7.0, 4 / 7.0}};
    QuasiNewton top = QuasiNewton.maximise(BOWL, new double[] {2, -1}, guess, 0.05, 100);
    assertEquals(2, top.iterations());
    assertArrayEquals(new double[] {3, -2}, top.at(), 1e-3);
    assertEquals(2 / 7.0, guess[0][0], "the caller's guess stays as it was");
  }

  // Of -x^2 the next step from x promises a gain of x^2.
  @Test
  void endsWhereTheNextStepPromisesLessThanTheTolerance() {
    ToDoubleFunction<double[]> hill = x -> -x[0] * x[0];
    QuasiNewton near = QuasiNewton.maximise(hill, new double[] {0.2}, 0.05, 100);
    assertTrue(near.converged());
    assertEquals(0.2, near.at()[0]);
    QuasiNewton farther = QuasiNewton.maximise(hill, new double[] {0.25}, 0.05, 100);
    assertEquals(0, farther.at()[0], 1e-3);
  }

  @Test
  void aStepThatGainsNothingIsShortened() {
    // The guess is twice too wide, so that the first step leads to the mirror image of the start.
    QuasiNewton top =
        QuasiNewton.maximise(
            x -> -x[0] * x[0] / 2, new double[] {1}, new double[][] {{2}}, 1e-12, 50);
    assertTrue(top.converged());
    assertEquals(0, top.at()[0], 1e-6);
  }

  @Test
  void aGuessThatPointsDownhillIsDropped() {
    QuasiNewton top =
        QuasiNewton.maximise(x -> -x[0] * x[0], new double[] {2}, new double[][] {{-1}}, 1e-9, 50);
    assertTrue(top.converged());
    assertEquals(0, top.at()[0], 1e-4);
  }

  @Test
  void aStartOnTheTopIsTheEnd() {
    QuasiNewton top = QuasiNewton.maximise(x -> -Math.pow(x[0], 4), new double[] {0}, 1e-9, 50);
    assertTrue(top.converged());
    assertEquals(0, top.at()[0]);
    assertEquals(2, top.iterations(), "once by one-sided, once by central differences");
  }

  @Test
  void goesNoFartherThanThreeWidthsAtOnce() {
    QuasiNewton first = QuasiNewton.maximise(x -> 10 * x[0] + 10 * x[1], new double[2], 1e-3, 1);
    assertEquals(3, Math.hypot(first.at()[0], first.at()[1]), 1e-9);
    assertEquals(10 * 3 * Math.sqrt(2), first.value(), 1e-6);
  }

  @Test
  void aHillWithoutATopEndsAfterTheAskedSteps() {
    QuasiNewton end = QuasiNewton.maximise(x -> x[0], new double[] {0}, 1e-3, 7);
    assertFalse(end.converged());
    assertEquals(7, end.iterations());
    assertTrue(end.value() > 3, "it climbed all the same");
  }

  @Test
  void aRidgeThatCannotBeClimbedIsNoTop() {
    QuasiNewton ridge = QuasiNewton.maximise(x -> -Math.abs(x[0]), new double[] {0}, 1e-3, 50);
    assertFalse(ridge.converged());
    assertEquals(0, ridge.value(), 1e-15);
  }

  @Test
  void keepsOffWhereTheFunctionIsNotDefined() {
    ToDoubleFunction<double[]> half =
        x -> x[0] > 0 ? Math.log(x[0]) - x[0] : Double.NEGATIVE_INFINITY;
    QuasiNewton top = QuasiNewton.maximise(half, new double[] {4}, 1e-9, 100);
    assertTrue(top.converged());
    assertEquals(1, top.at()[0], 1e-4);
    // At the rim the slope into the forbidden side counts as none.
    ToDoubleFunction<double[]> rim =
        x -> x[0] <= 2 ? -Math.pow(x[1] - 1, 2) : Double.NEGATIVE_INFINITY;
    QuasiNewton along = QuasiNewton.maximise(rim, new double[] {2, 0}, 1e-9, 100);
    assertArrayEquals(new double[] {2, 1}, along.at(), 1e-4);
  }

  @Test
  void curvatureOfAQuadraticIsItsMatrix() {
    // Top 5 at (3, -2), and a third direction on its own.
    ToDoubleFunction<double[]> bowl = x -> BOWL.applyAsDouble(x) - 4 * x[2] * x[2] + x[2] * x[0];
    double[][] expected = {{4, 1, -1}, {1, 2, 0}, {-1, 0, 8}};
    for (double step : new double[] {0.15, 2}) {
      double[][] found = QuasiNewton.curvature(bowl, new double[] {2.5, 1, -0.5}, step);
      for (int i = 0; i < 3; i++) {
        assertArrayEquals(expected[i], found[i], 1e-9);
      }
    }
  }
}
