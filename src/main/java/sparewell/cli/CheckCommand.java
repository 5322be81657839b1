package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
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

  @Parameters(
      paramLabel = "BOOK",
      arity = "1..*",
      description = "workbook (.xlsx, .xlsm) or folder")
  private List<Path> books;

  @Option(names = "--as-of", paramLabel = "DATE", description = "date of the analysis, yyyy-mm-dd")
  private LocalDate asOf;

  @Option(names = "--strict", description = "exit with 1 where there are errors among the findings")
  private boolean strict;

  @Option(names = "--quiet", description = "print nothing but problems")
  private boolean quiet;

  @Spec private CommandSpec spec;

  CheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    List<Path> found = Books.expand(books, spec);
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            Optional.ofNullable(asOf),
            Optional.empty(),
            Path.of("reports"),
            Optional.empty(),
            OptionalDouble.empty(),
            strict,
            RunOptions.USUAL_BACKUPS,
            false,
            BuildVersion.number());
    return Books.report(console, quiet, found, progress -> Batch.check(found, options, progress));
  }
}
