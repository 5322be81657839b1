package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToIntFunction;
import picocli.CommandLine;
import sparewell.run.Batch;
import sparewell.run.ExitCode;
import sparewell.run.ImportRun;
import sparewell.run.NewBook;
import sparewell.run.Outcome;
import sparewell.run.PostRun;
import sparewell.run.RunOptions;
import sparewell.workbook.InputSheet;
import sparewell.workbook.importing.ImportSource;

/** Commands that are one method each: they take what was typed and hand it to the run. */
final class Commands {
  private Commands() {}

  /** Every command, in the order of the help. */
  static List<Command> of(Console console, CommandLine program) {
    return List.of(
        command(console, "analyse", Commands::analyse),
        command(console, "check", Commands::check),
        command(console, "new", Commands::make),
        command(console, "import", Commands::importRows),
        command(console, "post", Commands::post),
        new ShareCommand(console),
        new WatchCommand(console),
        command(console, "help", asking -> help(asking, program)));
  }

  private static Command command(Console console, String name, ToIntFunction<Command> work) {
    return new Command(console, name) {
      @Override
      public Integer call() {
        return work.applyAsInt(this);
      }
    };
  }

  private static int analyse(Command command) {
    RunOptions options = command.options();
    List<Path> found = Books.expand(command.value("BOOK"), command);
    if (options.out().isPresent() && found.size() > 1) {
      throw command.wrong("--out takes one workbook, not " + found.size() + ".");
    }
    return command.report(found.size(), progress -> Batch.analyse(found, options, progress));
  }

  private static int check(Command command) {
    List<Path> found = Books.expand(command.value("BOOK"), command);
    RunOptions options = command.options();
    return command.report(found.size(), progress -> Batch.check(found, options, progress));
  }

  private static int make(Command command) {
    String system = command.value("--units");
    boolean metric = system.equalsIgnoreCase("metric");
    if (!metric && !system.equalsIgnoreCase("us")) {
      throw command.wrong("--units must be us or metric, not '" + system + "'.");
    }
    Outcome outcome = NewBook.make(command.value("FILE"), metric, command.value("--demo"));
    Books.report(command.console, false, outcome);
    return outcome.exitCode();
  }

  private static int importRows(Command command) {
    List<ImportSource> sources = new ArrayList<>();
    for (InputSheet sheet : ImportSource.SHEETS) {
      Optional<Path> file = command.option(option(sheet));
      file.ifPresent(path -> sources.add(new ImportSource(sheet, path)));
    }
    if (sources.isEmpty()) {
      List<String> names = ImportSource.SHEETS.stream().map(Commands::option).toList();
      throw command.wrong("Say what to import: " + String.join(", ", names) + ".");
    }
    return command.report(
        () ->
            ImportRun.run(
                command.value("BOOK"),
                sources,
                command.option("--dates"),
                command.value("--dry-run"),
                LocalDateTime.now(),
                command.backups()));
  }

  /** Name of the option for the rows of a sheet. */
  private static String option(InputSheet sheet) {
    return "--" + sheet.name().toLowerCase(Locale.ROOT).replace(' ', '-');
  }

  private static int post(Command command) {
    RunOptions options = command.options();
    return command.report(
        () ->
            PostRun.run(
                command.value("BOOK"),
                command.option("--date"),
                command.value("--dry-run"),
                options));
  }

  private static int help(Command command, CommandLine program) {
    String asked = command.value("COMMAND");
    CommandLine shown = asked == null ? program : program.getSubcommands().get(asked);
    if (shown == null) {
      throw command.wrong("There is no command '" + asked + "'.");
    }
    shown.usage(program.getOut());
    return ExitCode.DONE;
  }
}
