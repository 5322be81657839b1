package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import sparewell.run.Batch;
import sparewell.run.Experiences;
import sparewell.run.RunOptions;
import sparewell.workbook.Overrides;

/** Reads workbooks and says what is wrong in them; writes nothing. */
final class CheckCommand implements Callable<Integer> {
  private final Console console;
  private final CommandForm form =
      CommandForm.of("check", this, "Say what needs mending in workbooks; write nothing.");
  private final BookOptions over = new BookOptions(form);

  private CheckCommand(Console console) {
    this.console = console;
  }

  static CommandSpec of(Console console) {
    return new CheckCommand(console).form.complete();
  }

  @Override
  public Integer call() {
    List<Path> found = Books.expand(over.books(), form);
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
