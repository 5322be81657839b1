package sparewell.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.NewBook;
import sparewell.run.Outcome;

/** Makes a workbook to begin with. */
final class NewCommand implements Callable<Integer> {
  private final Console console;
  private final CommandForm form =
      CommandForm.of("new", this, "Make an empty workbook to fill in, or the demo workbook.");
  private final PositionalParamSpec file =
      form.parameter("FILE", Path.class, "1", "the workbook to make; it must not exist yet");
  private final OptionSpec units =
      form.option(
          "--units",
          "us|metric",
          String.class,
          "ounces, pounds and inches, or grams, kilograms and centimetres (${DEFAULT-VALUE})",
          "us");
  private final OptionSpec demo = form.flag("--demo", "filled with an invented angler's season");

  private NewCommand(Console console) {
    this.console = console;
  }

  static CommandSpec of(Console console) {
    return new NewCommand(console).form.complete();
  }

  @Override
  public Integer call() {
    String system = units.getValue();
    if (!system.equalsIgnoreCase("us") && !system.equalsIgnoreCase("metric")) {
      throw form.wrong("--units must be us or metric, not '" + system + "'.");
    }
    Outcome outcome =
        NewBook.make(file.getValue(), system.equalsIgnoreCase("metric"), demo.getValue());
    Books.report(console, false, outcome);
    return outcome.exitCode();
  }
}
