package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.PostRun;
import sparewell.run.RunOptions;

/** Turns ticks and the trip card into rows of the angler's sheets, and analyses. */
final class PostCommand extends Command {
  private final PositionalParamSpec book =
      parameter("BOOK", Path.class, "1", "workbook (.xlsx, .xlsm) with ticks");
  private final OptionSpec date =
      option("--date", "DATE", LocalDate.class, "date of the rows, yyyy-mm-dd; else As of");
  private final OptionSpec dryRun = flag("--dry-run", "show the rows; write nothing");
  private final OptionSpec reports = reports();
  private final OptionSpec backups = backups();
  private final OptionSpec quiet = quiet();

  PostCommand(Console console) {
    super(
        console,
        "post",
        "Turn what stands under Done and on Trip card into rows of your own sheets,",
        "after a backup, and analyse. Nothing is ever posted twice.");
  }

  @Override
  public Integer call() {
    RunOptions options = usual(reports, backups);
    return report(
        quiet.getValue(),
        () ->
            PostRun.run(
                book.getValue(), Optional.ofNullable(date.getValue()), dryRun.getValue(), options));
  }
}
