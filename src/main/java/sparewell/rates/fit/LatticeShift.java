package sparewell.rates.fit;

/**
 * How the lattice of the rates lies on that of {@link LogSums} for one cover at one set of
 * hyperparameters: shifted by ln(multiplier / size). The weights of the interpolation depend on
 * nothing else, so all styles share them.
 */
final class LatticeShift {
  /** Lattice points used to the left of the one below a point. */
  static final int BEFORE = 3;

  /** Lattice points used to its right. */
  static final int AFTER = 4;

  private static final double[] INVERSE = inverse();

  private final int perStep; // points of the rates' lattice in a step of the other
  private final int perPoint; // the other way round
  private final int[] base; // by place within a step
  private final double[][] weights;

  /**
   * Prepares the shift.
   *
   * @param shift ln(multiplier / size)
   * @param halvings halvings of the widest step that make the rates' lattice
   */
  LatticeShift(double shift, int halvings) {
    perStep = halvings == 0 ? 1 : 1 << (halvings - 1);
    perPoint = halvings == 0 ? 2 : 1;
    base = new int[perStep];
    weights = new double[perStep][];
    for (int r = 0; r < perStep; r++) {
      double place = shift / LogSums.STEP + (double) r / perStep;
      base[r] = (int) Math.floor(place);
      weights[r] = weights(place - base[r]);
    }
  }

  /** Number of the point of the other lattice at or below a point. */
  int base(int point) {
    return Math.floorDiv(point, perStep) * perPoint + base[Math.floorMod(point, perStep)];
  }

  /**
   * Interpolates and takes off.
   *
   * @param values on the other lattice
   * @param low number of the first of them
   */
  void takeOff(double[] values, int low, int first, int stride, int count, double[] out) {
    // Points at the same place within a step have the same weights.
    int kinds = perStep / gcd(perStep, stride);
    for (int kind = 0; kind < Math.min(kinds, count); kind++) {
      int point = first + kind * stride;
      double[] w = weights[Math.floorMod(point, perStep)];
      double w0 = w[0];
      double w1 = w[1];
      double w2 = w[2];
      double w3 = w[3];
      double w4 = w[4];
      double w5 = w[5];
      double w6 = w[6];
      double w7 = w[7];
      int k = base(point) - BEFORE - low;
      int step = kinds * stride / perStep * perPoint;
      for (int i = kind; i < count; i += kinds) {
        out[i] -=
            w0 * values[k]
                + w1 * values[k + 1]
                + w2 * values[k + 2]
                + w3 * values[k + 3]
                + w4 * values[k + 4]
                + w5 * values[k + 5]
                + w6 * values[k + 6]
                + w7 * values[k + 7];
        k += step;
      }
    }
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }

  /** Lagrange's weights for a point at a part of a step. */
  private static double[] weights(double part) {
    int n = BEFORE + AFTER + 1;
    double[] w = new double[n];
    double before = 1;
    for (int i = 0; i < n; i++) {
      w[i] = before * INVERSE[i];
      before *= part + BEFORE - i;
    }
    double after = 1;
    for (int i = n - 1; i >= 0; i--) {
      w[i] *= after;
      after *= part + BEFORE - i;
    }
    return w;
  }

  private static double[] inverse() {
    int n = BEFORE + AFTER + 1;
    double[] inverse = new double[n];
    for (int i = 0; i < n; i++) {
      double product = 1;
      for (int j = 0; j < n; j++) {
        product *= i == j ? 1 : i - j;
      }
      inverse[i] = 1 / product;
    }
    return inverse;
  }
}
