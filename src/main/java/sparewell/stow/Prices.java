package sparewell.stow;

import java.util.Arrays;

/**
 * The prices of a Lagrangian relaxation, kg m, and the direction in which they climb: of a box that
 * stands in too few or too many places, of side moment, of a moved box.
 */
final class Prices {
  /** Share of the last direction that goes on: steps that swing to and fro cancel out. */
  private static final double MOMENTUM = 0.6;

  final double[] box;
  double side;
  double move;

  private final double sideScale;
  private final double[] direction;
  private double sideDirection;
  private double moveDirection;
  private double[] best;

  /**
   * @param boxes starting price of each box
   * @param sideScale usual side moment of a box, kg m
   */
  Prices(double[] boxes, double sideScale) {
    this.box = boxes;
    this.sideScale = sideScale;
    this.direction = new double[boxes.length];
    this.best = copy();
  }

  /** All of them as they are now, to come back to. */
  double[] copy() {
    double[] copy = Arrays.copyOf(box, box.length + 2);
    copy[box.length] = side;
    copy[box.length + 1] = move;
    return copy;
  }

  /** Takes up prices copied earlier. */
  void take(double[] copied) {
    System.arraycopy(copied, 0, box, 0, box.length);
    side = copied[box.length];
    move = copied[box.length + 1];
  }

  /** These are the best so far. */
  void keep() {
    best = copy();
  }

  /** Back to the best so far. */
  void restore() {
    take(best);
  }

  /** The next step goes where its own slack points. */
  void forgetDirection() {
    Arrays.fill(direction, 0);
    sideDirection = 0;
    moveDirection = 0;
  }

  /**
   * One step uphill.
   *
   * @param boxSlack by how many places each box is short (below zero: too many)
   * @param sideSlack side moment beyond its limit, kg m, with its sign
   * @param moveSlack moved boxes beyond their number; 0 where they are not counted
   * @param rise how much higher the bound should come, kg m, times the length of the step
   * @return false where there is nowhere left to go
   */
  boolean climb(double[] boxSlack, double sideSlack, double moveSlack, double rise) {
    double length = 0;
    for (int i = 0; i < box.length; i++) {
      direction[i] = boxSlack[i] + MOMENTUM * direction[i];
      length += direction[i] * direction[i];
    }
    sideDirection = sideSlack / sideScale + MOMENTUM * sideDirection;
    moveDirection = moveSlack + MOMENTUM * moveDirection;
    length += sideDirection * sideDirection + moveDirection * moveDirection;
    if (length < 1e-12) {
      return false;
    }
    double size = rise / length;
    for (int i = 0; i < box.length; i++) {
      box[i] += size * direction[i];
    }
    double before = side;
    side += size * sideDirection / sideScale;
    if (before * side < 0) {
      side = 0; // only one of the two side limits has a price at a time
    }
    move = Math.max(0, move + size * moveDirection);
    return true;
  }
}
