package sparewell.cli;

import picocli.CommandLine;
import sparewell.run.ExitCode;

/** Shows how to use the program, or one of its commands. */
final class HelpCommand extends Command {
  private final CommandLine program;

  HelpCommand(Console console, CommandLine program) {
    super(console, "help");
    this.program = program;
  }

  @Override
  public Integer call() {
    String asked = value("COMMAND");
    CommandLine shown = asked == null ? program : program.getSubcommands().get(asked);
    if (shown == null) {
      throw wrong("There is no command '" + asked + "'.");
    }
    shown.usage(program.getOut());
    return ExitCode.DONE;
  }
}
