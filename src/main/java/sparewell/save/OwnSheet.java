package sparewell.save;

/**
 * A sheet of ours to be put into the workbook.
 *
 * @param name its tab, as {@link OwnSheetNames} gave it
 * @param front whether it stands before the angler's sheets; the others stand behind them
 */
public record OwnSheet(String name, boolean front) {}
