package sparewell.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.ExitCode;

/** Shows how to use the program, or one of its commands. */
final class HelpCommand implements Callable<Integer> {
  private final CommandLine program;
  private final CommandForm form =
      CommandForm.of("help", this, "Show how to use the program, or one of its commands.");
  private final PositionalParamSpec command =
      form.optionalParameter("COMMAND", "command to explain");

  private HelpCommand(CommandLine program) {
    this.program = program;
  }

  static CommandSpec of(CommandLine program) {
    return new HelpCommand(program).form.complete();
  }

  @Override
  public Integer call() {
    String asked = command.getValue();
    CommandLine shown = asked == null ? program : program.getSubcommands().get(asked);
    if (shown == null) {
      throw form.wrong("There is no command '" + asked + "'.");
    }
    shown.usage(program.getOut());
    return ExitCode.DONE;
  }
}
