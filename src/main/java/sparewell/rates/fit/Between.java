package sparewell.rates.fit;

/** Lagrange's interpolation between equally spaced points by the six nearest. */
final class Between {
  private Between() {}

  /**
   * A place on an endless row of points.
   *
   * @param whole number of the point at or below it
   * @param weights of the six points around it
   */
  record Place(int whole, double[] weights) {
    static Place of(double place) {
      int whole = (int) Math.floor(place);
      return new Place(whole, Between.weights(place - whole));
    }
  }

  /**
   * Weights of the points at -2, -1, 0, 1, 2 and 3 for a place.
   *
   * @param place from 0 to 1
   */
  static double[] weights(double place) {
    double[] weights = new double[6];
    for (int i = 0; i < 6; i++) {
      double product = 1;
      for (int j = 0; j < 6; j++) {
        product *= i == j ? 1 : (place + 2 - j) / (i - j);
      }
      weights[i] = product;
    }
    return weights;
  }

  /**
   * Adds interpolated values.
   *
   * @param values five more than there are to add
   * @param factor what to multiply them with
   * @param at first place to add to
   */
  static void add(double[] values, double[] weights, double factor, double[] out, int at) {
    double w0 = factor * weights[0];
    double w1 = factor * weights[1];
    double w2 = factor * weights[2];
    double w3 = factor * weights[3];
    double w4 = factor * weights[4];
    double w5 = factor * weights[5];
    for (int i = 0; i < values.length - 5; i++) {
      out[at + i] +=
          w0 * values[i]
              + w1 * values[i + 1]
              + w2 * values[i + 2]
              + w3 * values[i + 3]
              + w4 * values[i + 4]
              + w5 * values[i + 5];
    }
  }
}
