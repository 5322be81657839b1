package sparewell.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;

/**
 * What a command takes. Put together by calls: reading it off annotations takes longer than
 * anything else at the start of the program.
 */
final class CommandForm {
  private final CommandSpec spec;

  private CommandForm(CommandSpec spec) {
    this.spec = spec;
  }

  /**
   * A command.
   *
   * @param work what it does, once its options have their values
   */
  static CommandForm of(String name, Callable<Integer> work, String... description) {
    CommandSpec spec = CommandSpec.wrapWithoutInspection(work);
    spec.name(name).versionProvider(new BuildVersion());
    spec.usageMessage().description(description).sortOptions(false);
    return new CommandForm(spec);
  }

  /** Paths that must be given by their place: one, or a list of them. */
  PositionalParamSpec parameter(String label, Class<?> type, String arity, String description) {
    PositionalParamSpec parameter =
        PositionalParamSpec.builder()
            .paramLabel(label)
            .type(type)
            .auxiliaryTypes(Path.class)
            .arity(arity)
            .required(true)
            .description(description)
            .build();
    spec.addPositional(parameter);
    return parameter;
  }

  /** An option with a value. */
  OptionSpec option(String name, String label, Class<?> type, String description) {
    return add(OptionSpec.builder(name).paramLabel(label).type(type).description(description));
  }

  /** An option with a value that stands for it where it is not given. */
  OptionSpec option(
      String name, String label, Class<?> type, String description, String usualValue) {
    return add(
        OptionSpec.builder(name)
            .paramLabel(label)
            .type(type)
            .description(description)
            .defaultValue(usualValue));
  }

  /** An option that is there or not. */
  OptionSpec flag(String name, String description) {
    return add(
        OptionSpec.builder(name)
            .type(boolean.class)
            .initialValue(false)
            .arity("0")
            .description(description));
  }

  private OptionSpec add(OptionSpec.Builder builder) {
    OptionSpec option = builder.build();
    spec.addOption(option);
    return option;
  }

  /** Adds what every command ends with: help and version. */
  CommandSpec complete() {
    add(
        OptionSpec.builder("-h", "--help")
            .type(boolean.class)
            .arity("0")
            .usageHelp(true)
            .description("Show this help message and exit."));
    add(
        OptionSpec.builder("-V", "--version")
            .type(boolean.class)
            .arity("0")
            .versionHelp(true)
            .description("Print version information and exit."));
    return spec;
  }

  /** Says that what was given cannot be meant. */
  ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
