package sparewell.rates.fit;

/**
 * Lagrange's interpolation at a place on an endless row of equally spaced points.
 *
 * @param whole number of the point at or below the place
 * @param weights of the six points from two before that one to three behind it
 */
record Between(int whole, double[] weights) {
  static Between of(double place) {
    int whole = (int) Math.floor(place);
    double[] weights = new double[6];
    for (int i = 0; i < 6; i++) {
      weights[i] = 1;
      for (int j = 0; j < 6; j++) {
        weights[i] *= i == j ? 1 : (place - whole + 2 - j) / (i - j);
      }
    }
    return new Between(whole, weights);
  }

  /**
   * Takes interpolated values off others.
   *
   * @param values five more than there are others
   */
  void subtract(double[] values, double[] from) {
    double w0 = weights[0];
    double w1 = weights[1];
    double w2 = weights[2];
    double w3 = weights[3];
    double w4 = weights[4];
    double w5 = weights[5];
    for (int i = 0; i < from.length; i++) {
      from[i] -=
          w0 * values[i]
              + w1 * values[i + 1]
              + w2 * values[i + 2]
              + w3 * values[i + 3]
              + w4 * values[i + 4]
              + w5 * values[i + 5];
    }
  }
}
