package sparewell.stow;

/** Why a box is moved, or why not. */
public enum Reason {
  STAYS_PUT("stays put"),
  FITS_NOWHERE("fits into no compartment aboard"),
  NO_PLAN("no plan within all limits"),
  WITHHELD("a position is to be mended first"),
  STANDS_WELL("stands well"),
  GAINS_LITTLE("moving it would gain little"),
  DOES_NOT_FIT("does not fit where it is"),
  TO_BE_AT_HAND("to be at hand"),
  WEIGHT_GOES_AFT("weight goes aft"),
  MAKES_ROOM_AFT("makes room further aft"),
  BALANCE_OR_ROOM("for balance or room");

  private final String word;

  Reason(String word) {
    this.word = word;
  }

  /** The words shown. */
  public String word() {
    return word;
  }
}
