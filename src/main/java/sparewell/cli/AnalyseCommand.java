package sparewell.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import sparewell.run.Batch;
import sparewell.run.RunOptions;

/** Reads workbooks, works everything out, writes the answers back. */
final class AnalyseCommand implements Callable<Integer> {
  private final Console console;
  private final CommandForm form =
      CommandForm.of(
          "analyse", this, "Read workbooks, write the recommendation sheets and the CSV files.");
  private final BookOptions over = new BookOptions(form);
  private final BackupOption backups = new BackupOption(form);
  private final OptionSpec out =
      form.option("--out", "FILE", Path.class, "write to this workbook instead");
  private final OptionSpec reports =
      form.option(
          "--reports", "DIR", Path.class, "folder for the CSV files (${DEFAULT-VALUE})", "reports");
  private final OptionSpec budget =
      form.option("--budget", "N", BigDecimal.class, "money for the buy list");
  private final OptionSpec chance =
      form.option(
          "--chance", "P", BigDecimal.class, "wanted chance of not running out, between 0 and 1");
  private final OptionSpec dropSignature =
      form.flag(
          "--drop-signature", "accept signed workbooks; what is written has no signature any more");

  private AnalyseCommand(Console console) {
    this.console = console;
  }

  static CommandSpec of(Console console) {
    return new AnalyseCommand(console).form.complete();
  }

  @Override
  public Integer call() {
    Optional<BigDecimal> money = Optional.ofNullable(budget.getValue());
    if (money.isPresent() && money.get().signum() < 0) {
      throw form.wrong("--budget must not be negative: " + money.get());
    }
    List<Path> found = Books.expand(over.books(), form);
    Optional<Path> target = Optional.ofNullable(out.getValue());
    if (target.isPresent() && found.size() > 1) {
      throw form.wrong("--out takes one workbook, not " + found.size() + ".");
    }
    BigDecimal asked = chance.getValue();
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            over.asOf(),
            target,
            reports.getValue(),
            money,
            asked == null ? OptionalDouble.empty() : OptionalDouble.of(chanceWanted(asked)),
            over.strict(),
            backups.kept(),
            dropSignature.getValue(),
            BuildVersion.number());
    return Books.report(
        console, over.quiet(), found, (progress) -> Batch.analyse(found, options, progress));
  }

  private double chanceWanted(BigDecimal given) {
    double asked = given.doubleValue();
    String typed = given.toPlainString();
    if (asked >= 50 && asked <= 99.9) {
      console.complain("--chance " + typed + " is read as percent.");
      return asked; // the reader divides it, and leaves a finding
    }
    if (!(asked > 0 && asked < 1)) {
      throw form.wrong("--chance must lie between 0 and 1, such as 0.95: " + typed);
    }
    return asked;
  }
}
