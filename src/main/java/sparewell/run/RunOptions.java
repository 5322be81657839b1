package sparewell.run;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.save.SaveRequest;

/**
 * What the command line asks of an analysis.
 *
 * @param now date and time of the run, for backups and for the date of analysis where nothing else
 *     sets it
 * @param asOf date of analysis from the command line
 * @param out workbook to write instead of the one read
 * @param reports folder that holds one folder of CSV files for each workbook
 * @param budget money for the buy list from the command line
 * @param chance wanted chance from the command line, in (0, 1), or 50 to 99.9 as percent
 * @param strict whether errors among the findings make the exit code 1
 * @param backupsKept how many backups of a workbook stay, at least 1
 * @param dropSignature whether a signed workbook is written too, without its signature
 * @param version version shown on the front page
 */
public record RunOptions(
    LocalDateTime now,
    Optional<java.time.LocalDate> asOf,
    Optional<Path> out,
    Path reports,
    Optional<BigDecimal> budget,
    OptionalDouble chance,
    boolean strict,
    int backupsKept,
    boolean dropSignature,
    String version) {
  /** Backups kept where nobody says otherwise. */
  public static final int USUAL_BACKUPS = SaveRequest.USUAL_BACKUPS;
}
