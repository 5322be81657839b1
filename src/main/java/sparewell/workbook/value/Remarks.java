package sparewell.workbook.value;

import sparewell.finding.Code;

/** Takes remarks on a cell; the receiver adds place, content and consequence. */
public interface Remarks {
  /** The cell cannot be used. {@code more} follows the cell's content and its column's header. */
  void unusable(Code code, Object more);

  /** The cell was read under an assumption; {@code readAs} says as what. */
  void assumed(Code code, String readAs);

  /** Ignores every remark. */
  Remarks NONE =
      new Remarks() {
        @Override
        public void unusable(Code code, Object more) {}

        @Override
        public void assumed(Code code, String readAs) {}
      };
}
