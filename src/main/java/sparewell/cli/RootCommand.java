package sparewell.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;
import sparewell.run.ExitCode;

/** The program without a command: shows what there is. */
@Command(
    name = "sparewell",
    description = {
      "Reads a tackle workbook and writes back what to carry, bring aboard, buy, pack and move.",
      "Your own sheets are never changed."
    },
    mixinStandardHelpOptions = true,
    versionProvider = BuildVersion.class,
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done (findings allowed)",
      "1:done, but --strict was given and there were errors among the findings",
      "2:wrong usage",
      "3:a workbook could not be used or written; it is left as it was"
    })
public final class RootCommand implements Runnable {
  @Spec private CommandSpec spec;

  private RootCommand() {}

  /** Runs a command line and gives the exit code. */
  public static int execute(Console console, String... arguments) {
    CommandLine line = new CommandLine(new RootCommand());
    line.addSubcommand(new AnalyseCommand(console));
    line.addSubcommand(new CheckCommand(console));
    line.addSubcommand(new NewCommand(console));
    line.addSubcommand(new ImportCommand(console));
    line.setOut(console.out());
    line.setErr(console.error());
    line.setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF)); // words first, no colours at all
    Arguments.register(line);
    line.setParameterExceptionHandler((wrong, given) -> usage(console, wrong));
    line.setExecutionExceptionHandler(
        (failure, command, parsed) -> {
          console.complain(
              "Something went wrong inside the program ("
                  + failure.getClass().getSimpleName()
                  + (failure.getMessage() == null ? "" : ": " + failure.getMessage())
                  + "). Your workbook is as it was. Please report this message.");
          return ExitCode.REFUSED;
        });
    return line.execute(arguments);
  }

  /** What is wrong and where to read on; a page of help would hide it. */
  private static int usage(Console console, ParameterException wrong) {
    console.complain(wrong.getMessage());
    CommandLine command = wrong.getCommandLine();
    UnmatchedArgumentException.printSuggestions(wrong, command.getErr());
    console.complain("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
    return ExitCode.USAGE;
  }

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "Say what to do: analyse, check, new or import.");
  }
}
