package sparewell.season;

import sparewell.units.Length;

/** Inner size of a compartment or outer size of a box; all three are positive. */
public record Dimensions(Length length, Length width, Length height) {
  public double volumeM3() {
    return length.micrometres()
        * 1e-6
        * (width.micrometres() * 1e-6)
        * (height.micrometres() * 1e-6);
  }

  /** Returns whether a box of this size fits into an inside in one of its six orientations. */
  public boolean fitsInto(Dimensions inside) {
    long[] mine = {length.micrometres(), width.micrometres(), height.micrometres()};
    long[] room = {
      inside.length.micrometres(), inside.width.micrometres(), inside.height.micrometres()
    };
    java.util.Arrays.sort(mine);
    java.util.Arrays.sort(room);
    return mine[0] <= room[0] && mine[1] <= room[1] && mine[2] <= room[2];
  }
}
