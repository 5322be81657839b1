package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;
import sparewell.run.Experiences;
import sparewell.run.Outcome;
import sparewell.run.RunOptions;
import sparewell.workbook.Overrides;

/**
 * A command and its options. They are put together by calls, as reading them off annotations would
 * take a twentieth of a short run.
 */
abstract class Command implements Callable<Integer> {
  final Console console;
  private final CommandSpec spec;

  Command(Console console, String name, String... description) {
    this.console = console;
    spec = CommandSpec.wrapWithoutInspection(this);
    spec.name(name).versionProvider(new BuildVersion());
    spec.usageMessage().description(description).sortOptions(false);
  }

  /** A value given by its place, or a list of paths; {@code arity} says how many. */
  PositionalParamSpec parameter(String label, Class<?> type, String arity, String description) {
    PositionalParamSpec parameter =
        PositionalParamSpec.builder()
            .paramLabel(label)
            .type(type)
            .auxiliaryTypes(type == List.class ? Path.class : type)
            .arity(arity)
            .required(!arity.startsWith("0"))
            .description(description)
            .build();
    spec.addPositional(parameter);
    return parameter;
  }

  OptionSpec option(String name, String label, Class<?> type, String description) {
    return option(name, label, type, description, null);
  }

  OptionSpec option(
      String name, String label, Class<?> type, String description, String usualValue) {
    return add(
        OptionSpec.builder(name)
            .paramLabel(label)
            .type(type)
            .description(description)
            .defaultValue(usualValue));
  }

  OptionSpec reports() {
    return option(
        "--reports", "DIR", Path.class, "folder for the CSV files (${DEFAULT-VALUE})", "reports");
  }

  OptionSpec quiet() {
    return flag("--quiet", "print nothing but problems");
  }

  /** The number of backups that stay, for commands that replace a workbook. */
  OptionSpec backups() {
    return option(
        "--keep-backups",
        "N",
        int.class,
        "how many backups of a workbook stay, at least 1 (${DEFAULT-VALUE})",
        "" + RunOptions.USUAL_BACKUPS);
  }

  /** The number given to {@link #backups}, at least 1. */
  int kept(OptionSpec backups) {
    int number = backups.getValue();
    if (number < 1) {
      throw wrong("--keep-backups must be at least 1: " + number);
    }
    return number;
  }

  OptionSpec flag(String name, String description) {
    return add(bare(description, name));
  }

  private static OptionSpec.Builder bare(String description, String... names) {
    return OptionSpec.builder(names)
        .type(boolean.class)
        .initialValue(false)
        .arity("0")
        .description(description);
  }

  private OptionSpec add(OptionSpec.Builder builder) {
    OptionSpec option = builder.build();
    spec.addOption(option);
    return option;
  }

  /** Adds what every command ends with: help and version. */
  CommandSpec complete() {
    add(bare("Show this help message and exit.", "-h", "--help").usageHelp(true));
    add(bare("Print version information and exit.", "-V", "--version").versionHelp(true));
    return spec;
  }

  /** Options of an analysis that writes into the workbook itself. */
  RunOptions usual(OptionSpec reports, OptionSpec backups) {
    return new RunOptions(
        LocalDateTime.now(),
        Optional.empty(),
        reports.getValue(),
        Overrides.NONE,
        false,
        kept(backups),
        false,
        console.columns(),
        new Experiences(Optional.empty()),
        BuildVersion.number());
  }

  /** Runs the work on one workbook, prints what came of it and gives the exit code. */
  int report(boolean silent, Supplier<Outcome> work) {
    Outcome outcome;
    try (Watch watch = new Watch(console, 1, silent)) {
      outcome = work.get();
      watch.report(1);
    }
    Books.report(console, silent, outcome);
    return outcome.exitCode();
  }

  /** Says that what was given cannot be meant. */
  ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
