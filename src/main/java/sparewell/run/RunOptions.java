package sparewell.run;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Optional;
import sparewell.workbook.ReadOptions;

/**
 * Options of an analysis.
 *
 * @param now date and time of the run, for backups
 * @param reports folder that holds one folder of CSV files for each workbook
 * @param backupsKept how many backups of a workbook stay, at least 1
 * @param dropSignature true to write a signed workbook without its signature
 * @param columns characters that a line of what is printed may have
 */
public record RunOptions(
    LocalDateTime now,
    Optional<Path> out,
    Path reports,
    ReadOptions reading,
    boolean strict,
    int backupsKept,
    boolean dropSignature,
    int columns,
    Experiences experience,
    String version) {
  public static final int USUAL_BACKUPS = 10;
}
