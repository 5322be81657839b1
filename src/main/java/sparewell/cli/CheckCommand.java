package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sparewell.run.Batch;
import sparewell.run.RunOptions;

/** Reads workbooks and says what is wrong in them; writes nothing. */
@Command(
    name = "check",
    description = "Say what needs mending in workbooks; write nothing.",
    mixinStandardHelpOptions = true,
    versionProvider = BuildVersion.class,
    sortOptions = false)
final class CheckCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private BookOptions over;

  @Spec private CommandSpec spec;

  CheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    List<Path> found = Books.expand(over.books, spec);
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            Optional.ofNullable(over.asOf),
            Optional.empty(),
            Path.of("reports"),
            Optional.empty(),
            OptionalDouble.empty(),
            over.strict,
            RunOptions.USUAL_BACKUPS,
            false,
            BuildVersion.number());
    return Books.report(
        console, over.quiet, found, progress -> Batch.check(found, options, progress));
  }
}
