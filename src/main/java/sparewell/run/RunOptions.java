package sparewell.run;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Optional;
import sparewell.workbook.Overrides;
import sparewell.workbook.read.ReadOptions;

/**
 * Options of an analysis, from the command line.
 *
 * @param now date and time of the run, for backups and for the date of analysis where nothing else
 *     sets it
 * @param reports folder that holds one folder of CSV files for each workbook
 * @param overrides settings of the command line, which override those of the workbook
 * @param backupsKept how many backups of a workbook stay, at least 1
 * @param dropSignature true to write a signed workbook without its signature
 * @param columns characters that a line of what is printed may have
 */
public record RunOptions(
    LocalDateTime now,
    Optional<Path> out,
    Path reports,
    Overrides overrides,
    boolean strict,
    int backupsKept,
    boolean dropSignature,
    int columns,
    Experiences experience,
    String version) {
  public static final int USUAL_BACKUPS = 10;

  /** The part that the reading of a workbook needs. */
  ReadOptions reading() {
    return new ReadOptions(now.toLocalDate(), overrides);
  }
}
