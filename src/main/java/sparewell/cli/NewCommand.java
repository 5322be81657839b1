package sparewell.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sparewell.run.NewBook;
import sparewell.run.Outcome;

/** Makes a workbook to begin with. */
@Command(
    name = "new",
    description = "Make an empty workbook to fill in, or the demo workbook.",
    mixinStandardHelpOptions = true,
    versionProvider = BuildVersion.class,
    sortOptions = false)
final class NewCommand implements Callable<Integer> {
  private final Console console;

  @Parameters(paramLabel = "FILE", description = "the workbook to make; it must not exist yet")
  private Path file;

  @Option(
      names = "--units",
      paramLabel = "us|metric",
      defaultValue = "us",
      description =
          "ounces, pounds and inches, or grams, kilograms and centimetres (${DEFAULT-VALUE})")
  private String units;

  @Option(names = "--demo", description = "filled with an invented angler's season")
  private boolean demo;

  @Spec private CommandSpec spec;

  NewCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (!units.equalsIgnoreCase("us") && !units.equalsIgnoreCase("metric")) {
      throw new ParameterException(
          spec.commandLine(), "--units must be us or metric, not '" + units + "'.");
    }
    Outcome outcome = NewBook.make(file, units.equalsIgnoreCase("metric"), demo);
    Books.report(console, false, outcome);
    return outcome.exitCode();
  }
}
