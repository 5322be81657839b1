package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class QuasiNewtonTest {
  /** Top 5 at (3, -2), minus the second derivatives are (4, 1; 1, 2). */
  private static final ToDoubleFunction<double[]> BOWL =
      x -> {
        double u = x[0] - 3;
        double v = x[1] + 2;
        return 5 - 2 * u * u - u * v - v * v;
      };

  private static QuasiNewton.Peak climb(
      ToDoubleFunction<double[]> f, double tolerance, int most, double... start) {
    double[][] guess = new double[start.length][start.length];
    for (int i = 0; i < start.length; i++) {
      guess[i][i] = 0.5;
    }
    return QuasiNewton.maximise(f, start, guess, tolerance, most);
  }

  // One-sided differences miss the top by half their step, 5e-4.
  @Test
  void climbsToTheTopOfAKnownHill() {
    QuasiNewton.Peak bowl = climb(BOWL, 1e-7, 100, 0, 0);
    assertTrue(bowl.converged());
    assertArrayEquals(new double[] {3, -2}, bowl.at(), 2e-3);
    assertEquals(5, bowl.value(), 1e-5);
  }

  @Test
  void aRoughClimbEndsNearTheTop() {
    QuasiNewton.Peak top = climb(BOWL, 0.05, 100, -4, 6);
    assertTrue(top.converged());
    assertEquals(5, top.value(), 0.2);
  }

  @Test
  void aGoodGuessOfTheCurvatureLeadsStraightUp() {
    // The inverse of (4, 1; 1, 2).
    double[][] guess = {{2 / 7.0, -1 / 7.0}, {-1 / 7.0, 4 / 7.0}};
    QuasiNewton.Peak top = QuasiNewton.maximise(BOWL, new double[] {2, -1}, guess, 0.05, 2);
    assertTrue(top.converged());
    assertArrayEquals(new double[] {3, -2}, top.at(), 2e-3);
    assertEquals(2 / 7.0, guess[0][0], "the caller's guess stays as it was");
  }

  @Test
  void goesNoFartherThanThreeWidthsAtOnce() {
    QuasiNewton.Peak first = climb(x -> 10 * x[0] + 10 * x[1], 1e-3, 1, 0, 0);
    assertEquals(3, Math.hypot(first.at()[0], first.at()[1]), 1e-9);
    assertFalse(first.converged());
  }

  @Test
  void keepsOffWhereTheFunctionIsNotDefined() {
    QuasiNewton.Peak top =
        climb(x -> x[0] > 0 ? Math.log(x[0]) - x[0] : Double.NEGATIVE_INFINITY, 1e-7, 100, 4);
    assertTrue(top.converged());
    assertEquals(1, top.at()[0], 2e-3);
  }

  /** A ridge 100 times as long as wide; by the slope alone it would take hundreds of steps. */
  @Test
  void learnsTheCurvatureOnItsWay() {
    ToDoubleFunction<double[]> ridge = x -> -50 * x[0] * x[0] - 0.5 * x[1] * x[1];
    QuasiNewton.Peak top = climb(ridge, 1e-6, 30, 1, 10);
    assertTrue(top.converged());
    assertArrayEquals(new double[] {0, 0}, top.at(), 2e-3);
  }

  /** From where the function bends upwards, the slope grows on the way: nothing is learnt there. */
  @Test
  void climbsOutOfAHollow() {
    QuasiNewton.Peak top = climb(x -> -Math.pow(x[0] * x[0] - 9, 2) / 100, 1e-9, 100, 0.2);
    assertTrue(top.converged());
    assertEquals(3, top.at()[0], 2e-3);
  }

  /** On the tip of a wedge no step gains; 0.25 was expected of one. */
  @Test
  void endsWhereNoStepGains() {
    QuasiNewton.Peak rough = climb(x -> -Math.abs(x[0]), 0.003, 100, 0);
    assertEquals(0, rough.at()[0]);
    assertTrue(rough.converged(), "little, beside a hundred times the tolerance");
    assertFalse(climb(x -> -Math.abs(x[0]), 0.002, 100, 0).converged());
  }

  @Test
  void curvatureOfAQuadraticIsItsMatrix() {
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
