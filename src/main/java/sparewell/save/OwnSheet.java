package sparewell.save;

/**
 * A sheet to be put into the workbook.
 *
 * @param name its tab, as {@link OwnSheetNames} gave it
 * @param front whether it stands before the angler's sheets; the others stand behind them
 * @param marked whether it stays ours; without the marker it is the angler's
 */
public record OwnSheet(String name, boolean front, boolean marked) {
  public OwnSheet(String name, boolean front) {
    this(name, front, true);
  }

  /** A sheet that is the angler's from then on. */
  public static OwnSheet theirs(String name) {
    return new OwnSheet(name, false, false);
  }
}
