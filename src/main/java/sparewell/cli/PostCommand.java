package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.Outcome;
import sparewell.run.PostRun;
import sparewell.run.RunOptions;

/** Turns ticks and the trip card into rows of the angler's sheets, and analyses. */
final class PostCommand implements Callable<Integer> {
  private final Console console;
  private final CommandForm form =
      CommandForm.of(
          "post",
          this,
          "Turn what stands under Done and on Trip card into rows of your own sheets,",
          "after a backup, and analyse. Nothing is ever posted twice.");
  private final PositionalParamSpec book =
      form.parameter("BOOK", Path.class, "1", "workbook (.xlsx, .xlsm) with ticks");
  private final OptionSpec date =
      form.option("--date", "DATE", LocalDate.class, "date of the rows, yyyy-mm-dd; else As of");
  private final OptionSpec dryRun = form.flag("--dry-run", "show the rows; write nothing");
  private final OptionSpec reports = form.reports();
  private final OptionSpec backups = form.backups();
  private final OptionSpec quiet = form.flag("--quiet", "print nothing but problems");

  private PostCommand(Console console) {
    this.console = console;
  }

  static CommandSpec of(Console console) {
    return new PostCommand(console).form.complete();
  }

  @Override
  public Integer call() {
    RunOptions options =
        RunOptions.usual(
            LocalDateTime.now(),
            reports.getValue(),
            form.kept(backups),
            console.columns(),
            BuildVersion.number());
    boolean silent = quiet.getValue();
    Outcome outcome;
    try (Watch watch = new Watch(console, 1, silent)) {
      outcome =
          PostRun.run(
              book.getValue(), Optional.ofNullable(date.getValue()), dryRun.getValue(), options);
      watch.report(1);
    }
    Books.report(console, silent, outcome);
    return outcome.exitCode();
  }
}
