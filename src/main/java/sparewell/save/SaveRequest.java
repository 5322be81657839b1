package sparewell.save;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import sparewell.ooxml.WorkbookPackage;

/**
 * Request to save our sheets.
 *
 * @param original the workbook as it was read; stays open
 * @param replaced the workbook that must not have changed meanwhile: the original, or the workbook
 *     that the original is a copy of with new rows
 * @param target the file to write: the original's own, or another ({@code --out})
 * @param now date and time for the backup's name
 * @param backupsKept how many backups stay, at least 1
 * @param dropSignature whether a signed workbook may be written without its signature
 */
public record SaveRequest(
    WorkbookPackage original,
    WorkbookPackage replaced,
    Path target,
    OwnParts own,
    List<OwnSheet> sheets,
    LocalDateTime now,
    int backupsKept,
    boolean dropSignature) {
  public static final int USUAL_BACKUPS = 10;

  public SaveRequest {
    sheets = List.copyOf(sheets);
  }
}
