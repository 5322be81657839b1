package sparewell.cli;

import picocli.CommandLine.Model.OptionSpec;
import sparewell.run.RunOptions;

/** The number of backups that stay, for every command that replaces a workbook. */
final class BackupOption {
  private final CommandForm form;
  private final OptionSpec option;

  BackupOption(CommandForm form) {
    this.form = form;
    option =
        form.option(
            "--keep-backups",
            "N",
            int.class,
            "how many backups of a workbook stay, at least 1 (${DEFAULT-VALUE})",
            "" + RunOptions.USUAL_BACKUPS);
  }

  int kept() {
    int number = option.getValue();
    if (number < 1) {
      throw form.wrong("--keep-backups must be at least 1: " + number);
    }
    return number;
  }
}
