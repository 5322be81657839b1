package sparewell.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;
import sparewell.run.RunOptions;

/** How many backups stay, for every command that replaces a workbook. */
final class BackupOption {
  @Spec(Target.MIXEE)
  private CommandSpec command;

  private int kept;

  @Option(
      names = "--keep-backups",
      paramLabel = "N",
      defaultValue = "" + RunOptions.USUAL_BACKUPS,
      description = "how many backups of a workbook stay, at least 1 (${DEFAULT-VALUE})")
  void keep(int number) {
    if (number < 1) {
      throw new ParameterException(
          command.commandLine(), "--keep-backups must be at least 1: " + number);
    }
    kept = number;
  }

  int kept() {
    return kept;
  }
}
