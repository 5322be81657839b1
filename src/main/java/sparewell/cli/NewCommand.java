package sparewell.cli;

import java.nio.file.Path;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.NewBook;
import sparewell.run.Outcome;

/** Makes a workbook to begin with. */
final class NewCommand extends Command {
  private final PositionalParamSpec file =
      parameter("FILE", Path.class, "1", "the workbook to make; it must not exist yet");
  private final OptionSpec units =
      option(
          "--units",
          "us|metric",
          String.class,
          "ounces, pounds and inches, or grams, kilograms and centimetres (${DEFAULT-VALUE})",
          "us");
  private final OptionSpec demo = flag("--demo", "filled with an invented angler's season");

  NewCommand(Console console) {
    super(console, "new", "Make an empty workbook to fill in, or the demo workbook.");
  }

  @Override
  public Integer call() {
    String system = units.getValue();
    if (!system.equalsIgnoreCase("us") && !system.equalsIgnoreCase("metric")) {
      throw wrong("--units must be us or metric, not '" + system + "'.");
    }
    Outcome outcome =
        NewBook.make(file.getValue(), system.equalsIgnoreCase("metric"), demo.getValue());
    Books.report(console, false, outcome);
    return outcome.exitCode();
  }
}
