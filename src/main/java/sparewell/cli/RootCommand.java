package sparewell.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import sparewell.run.ExitCode;

/** The program without a command: shows what there is. */
public final class RootCommand extends Command {
  /** Text that looks like a workbook or a folder where a command should stand. */
  private static final Pattern BOOK = Pattern.compile("(?i)\\.(xlsx|xlsm|xls|ods)$|[/\\\\]");

  private RootCommand(Console console) {
    super(console, "sparewell");
  }

  /** Runs a command line and gives the exit code. */
  public static int execute(Console console, String... arguments) {
    CommandSpec root = new RootCommand(console).complete();
    Map<String, String> exitCodes = new LinkedHashMap<>();
    DECLARED.get("exit codes").rows().forEach(code -> exitCodes.put(code.get(0), code.get(1)));
    root.usageMessage().exitCodeListHeading("%nExit codes:%n").exitCodeList(exitCodes);
    CommandLine line = new CommandLine(root);
    Commands.of(console, line).forEach(command -> line.addSubcommand(command.complete()));
    line.setOut(console.out);
    line.setErr(console.error);
    line.setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF)); // words first, no colours at all
    Arguments.register(line);
    line.setParameterExceptionHandler((wrong, given) -> usage(console, wrong, given));
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

  /** Tells what is wrong and where to read on; a page of help would hide it. */
  private static int usage(Console console, ParameterException wrong, String... given) {
    if (given.length > 0 && BOOK.matcher(given[0]).find()) {
      console.complain("Say what to do with " + given[0] + ", such as:");
      console.complain("  sparewell analyse " + given[0]);
      console.complain("Try 'sparewell --help'.");
      return ExitCode.USAGE;
    }
    CommandLine command = wrong.getCommandLine();
    console.complain(tooMany(wrong).orElse(wrong.getMessage()));
    UnmatchedArgumentException.printSuggestions(wrong, command.getErr());
    console.complain("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
    return ExitCode.USAGE;
  }

  /** A word that is no command, or a second workbook where a command takes one. */
  private static Optional<String> tooMany(ParameterException wrong) {
    CommandSpec command = wrong.getCommandLine().getCommandSpec();
    if (!(wrong instanceof UnmatchedArgumentException more) || more.isUnknownOption()) {
      return Optional.empty();
    }
    if (command.positionalParameters().isEmpty()) {
      return Optional.of("There is no command '" + more.getUnmatched().get(0) + "'.");
    }
    return Optional.of(
        "'%s' takes one %s at a time; '%s' is one too many. Run it once for each."
            .formatted(
                command.qualifiedName(),
                command.positionalParameters().get(0).paramLabel(),
                more.getUnmatched().get(0)));
  }

  @Override
  public Integer call() {
    throw wrong("Say what to do: analyse, check, new, import, post, share or watch.");
  }
}
