package sparewell.stow;

/** The boxes that stand elsewhere than now, in a list from which any can be drawn at once. */
final class MovedBoxes {
  private final int[] now;
  private final int[] list;
  private final int[] position;
  private int count;

  /**
   * @param now place of each box at present
   */
  MovedBoxes(int[] now) {
    this.now = now;
    list = new int[now.length];
    position = new int[now.length];
  }

  /** How many there are. */
  int count() {
    return count;
  }

  /** One of them, {@code index} from 0 up to their number. */
  int get(int index) {
    return list[index];
  }

  /** All boxes stand where they are now. */
  void clear() {
    count = 0;
  }

  /** What the step of a box adds to their number: 1, 0 or, on the way home, -1. */
  int change(int box, int from, int to) {
    return (from == now[box] ? 1 : 0) - (to == now[box] ? 1 : 0);
  }

  /** The box steps from place to place. */
  void step(int box, int from, int to) {
    int change = change(box, from, to);
    if (change > 0) {
      position[box] = count;
      list[count++] = box;
    } else if (change < 0) {
      int last = list[--count];
      list[position[box]] = last;
      position[last] = position[box];
    }
  }
}
