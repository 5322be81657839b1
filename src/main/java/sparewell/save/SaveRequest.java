package sparewell.save;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import sparewell.ooxml.WorkbookPackage;

/**
 * What to save where.
 *
 * @param original the workbook as it was read; stays open
 * @param target the file to write: the original's own, or another ({@code --out})
 * @param scratch a workbook with our sheets only, without names for the whole workbook; every text
 *     stands in its cell, and dates count from where the original's do
 * @param sheets our sheets in their order; each stands in the scratch workbook under this name
 * @param now date and time for the backup's name
 * @param backupsKept how many backups stay, at least 1
 * @param dropSignature whether a signed workbook may be written without its signature
 */
public record SaveRequest(
    WorkbookPackage original,
    Path target,
    Path scratch,
    List<OwnSheet> sheets,
    LocalDateTime now,
    int backupsKept,
    boolean dropSignature) {
  /** Backups kept where nobody says otherwise. */
  public static final int USUAL_BACKUPS = 10;

  public SaveRequest {
    sheets = List.copyOf(sheets);
  }
}
