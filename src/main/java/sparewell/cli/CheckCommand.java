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
  private final BookOptions over = new BookOptions(this);

  CheckCommand(Console console) {
    super(console, "check", "Say what needs mending in workbooks; write nothing.");
  }

  @Override
  public Integer call() {
    List<Path> found = Books.expand(over.books(), this);
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            Optional.empty(),
            Path.of("reports"),
            new Overrides(over.asOf(), Optional.empty(), Optional.empty()),
            over.strict(),
            RunOptions.USUAL_BACKUPS,
            false,
            console.columns(),
            new Experiences(Optional.empty()),
            BuildVersion.number());
    return Books.report(
        console, over.quiet(), found, progress -> Batch.check(found, options, progress));
  }
}
