package sparewell.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;
import sparewell.declared.DeclaredTable;
import sparewell.run.Experiences;
import sparewell.run.Outcome;
import sparewell.run.RunOptions;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputSheets;
import sparewell.workbook.Range;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.TypedChance;

/** A command, its options as {@code commands.txt} declares them. */
abstract class Command implements Callable<Integer> {
  static final Map<String, DeclaredTable> DECLARED =
      DeclaredTable.read(Command.class, "commands.txt");

  private static final Map<String, List<String>> SHARED =
      DECLARED.get("options of several commands").byName();

  private static final Map<String, Class<?>> KINDS =
      Map.of(
          "flag", boolean.class,
          "text", String.class,
          "path", Path.class,
          "paths", List.class,
          "date", LocalDate.class,
          "number", BigDecimal.class,
          "whole", int.class,
          "order", DateOrder.class);

  final Console console;
  private final CommandSpec spec = CommandSpec.wrapWithoutInspection(this);
  private final Map<String, ArgSpec> given = new HashMap<>();

  Command(Console console, String name) {
    this.console = console;
    DeclaredTable declared = DECLARED.get(name);
    spec.name(name).versionProvider(new BuildVersion());
    spec.usageMessage().description(declared.title().split("(?<=\\.) ")).sortOptions(false);
    for (List<String> line : declared.rows()) {
      add(line.size() == 1 ? SHARED.get(line.get(0)) : line);
    }
  }

  private void add(List<String> line) {
    String name = line.get(0);
    Class<?> type = KINDS.get(line.get(2));
    if (!name.startsWith("--")) {
      PositionalParamSpec.Builder place =
          PositionalParamSpec.builder()
              .paramLabel(name)
              .type(type)
              .auxiliaryTypes(type == List.class ? Path.class : type)
              .arity(line.get(1))
              .required(!line.get(1).startsWith("0"))
              .description(line.get(4));
      given.put(name, place.build());
      spec.addPositional((PositionalParamSpec) given.get(name));
      return;
    }
    OptionSpec.Builder option =
        type == boolean.class
            ? flag(line.get(4), name)
            : OptionSpec.builder(name)
                .paramLabel(line.get(1).replace(" or ", "|"))
                .type(type)
                .description(line.get(4))
                .defaultValue(line.get(3).isEmpty() ? null : line.get(3));
    given.put(name, option.build());
    spec.addOption((OptionSpec) given.get(name));
  }

  private static OptionSpec.Builder flag(String description, String... names) {
    return OptionSpec.builder(names)
        .type(boolean.class)
        .initialValue(false)
        .arity("0")
        .description(description);
  }

  /** Adds what every command ends with: help and version. */
  CommandSpec complete() {
    spec.addOption(
        flag("Show this help message and exit.", "-h", "--help").usageHelp(true).build());
    spec.addOption(
        flag("Print version information and exit.", "-V", "--version").versionHelp(true).build());
    return spec;
  }

  /** Value of an option or a place; null where there is none. */
  <T> T value(String name) {
    return given.get(name).getValue();
  }

  <T> Optional<T> option(String name) {
    return Optional.ofNullable(given.get(name)).map(ArgSpec::getValue);
  }

  /** The number of backups that stay, at least 1. */
  int backups() {
    int number = this.<Integer>option("--keep-backups").orElse(RunOptions.USUAL_BACKUPS);
    if (number < 1) {
      throw wrong("--keep-backups must be at least 1: " + number);
    }
    return number;
  }

  private Optional<LocalDate> asOf() {
    Optional<LocalDate> asked = option("--as-of");
    if (asked.isPresent() && !InputSheets.isPlausible(asked.get())) {
      throw wrong("--as-of must be a date between 1950 and 2199: " + asked.get());
    }
    return asked;
  }

  /** Options of an analysis; one that the command does not take has its usual value. */
  RunOptions options() {
    LocalDateTime now = LocalDateTime.now();
    return new RunOptions(
        now,
        option("--out"),
        this.<Path>option("--reports").orElse(Path.of("reports")),
        new ReadOptions(now.toLocalDate(), asOf(), budget(), chance()),
        this.<Boolean>option("--strict").orElse(false),
        backups(),
        this.<Boolean>option("--drop-signature").orElse(false),
        console.columns(),
        experiences(),
        BuildVersion.number());
  }

  private Experiences experiences() {
    Experiences experiences = new Experiences(option("--experience"));
    Optional<String> fault = experiences.fault();
    if (fault.isPresent()) {
      throw wrong("--experience: " + fault.get());
    }
    return experiences;
  }

  private Optional<BigDecimal> budget() {
    Optional<BigDecimal> asked = option("--budget");
    Range allowed = InputSheets.SETTING_ROWS.column("Budget").range().orElseThrow();
    if (asked.isPresent() && !allowed.holds(asked.get().doubleValue())) {
      throw wrong("--budget must be " + allowed.words() + ": " + asked.get().toPlainString());
    }
    return asked;
  }

  private Optional<TypedChance> chance() {
    Optional<BigDecimal> asked = option("--chance");
    Optional<TypedChance> typed = asked.flatMap(given -> TypedChance.of(given.doubleValue()));
    if (asked.isPresent() && typed.isEmpty()) {
      throw wrong(
          "--chance must lie between 0 and 1, such as 0.95: " + asked.get().toPlainString());
    }
    if (typed.isPresent() && typed.get().isPercent()) {
      console.complain("--chance " + asked.get().toPlainString() + " is read as percent.");
    }
    return typed;
  }

  /** Runs the work on one workbook, prints what came of it and gives the exit code. */
  int report(Supplier<Outcome> work) {
    return report(1, done -> List.of(work.get()));
  }

  /** The same for several; the worst exit code. */
  int report(int books, Function<IntConsumer, List<Outcome>> work) {
    return Books.report(console, value("--quiet"), books, work);
  }

  ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
