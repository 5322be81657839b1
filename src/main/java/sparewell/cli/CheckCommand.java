package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import sparewell.run.Batch;
import sparewell.run.Experiences;
import sparewell.run.RunOptions;
import sparewell.workbook.Overrides;

/** Reads workbooks and says what is wrong in them; writes nothing. */
final class CheckCommand extends Command {
  CheckCommand(Console console) {
    super(console, "check");
  }

  @Override
  public Integer call() {
    List<Path> found = Books.expand(value("BOOK"), this);
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            Optional.empty(),
            Path.of("reports"),
            new Overrides(asOf(), Optional.empty(), Optional.empty()),
            value("--strict"),
            RunOptions.USUAL_BACKUPS,
            false,
            console.columns(),
            new Experiences(Optional.empty()),
            BuildVersion.number());
    return Books.report(
        console, value("--quiet"), found, progress -> Batch.check(found, options, progress));
  }
}
