package sparewell.cli;

import picocli.CommandLine;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.ExitCode;

/** Shows how to use the program, or one of its commands. */
final class HelpCommand extends Command {
  private final CommandLine program;
  private final PositionalParamSpec command =
      parameter("COMMAND", String.class, "0..1", "command to explain");

  HelpCommand(Console console, CommandLine program) {
    super(console, "help", "Show how to use the program, or one of its commands.");
    this.program = program;
  }

  @Override
  public Integer call() {
    String asked = command.getValue();
    CommandLine shown = asked == null ? program : program.getSubcommands().get(asked);
    if (shown == null) {
      throw wrong("There is no command '" + asked + "'.");
    }
    shown.usage(program.getOut());
    return ExitCode.DONE;
  }
}
