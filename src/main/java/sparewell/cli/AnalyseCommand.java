package sparewell.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import sparewell.run.Batch;
import sparewell.run.RunOptions;

/** Reads workbooks, works everything out, writes the answers back. */
@Command(
    name = "analyse",
    description = "Read workbooks, write the recommendation sheets and the CSV files.",
    mixinStandardHelpOptions = true,
    versionProvider = BuildVersion.class,
    sortOptions = false)
final class AnalyseCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private BookOptions over;

  @Mixin private BackupOption backups;

  @Option(names = "--out", paramLabel = "FILE", description = "write to this workbook instead")
  private Path out;

  @Option(
      names = "--reports",
      paramLabel = "DIR",
      defaultValue = "reports",
      description = "folder for the CSV files (${DEFAULT-VALUE})")
  private Path reports;

  @Option(names = "--budget", paramLabel = "N", description = "money for the buy list")
  private BigDecimal budget;

  @Option(
      names = "--chance",
      paramLabel = "P",
      description = "wanted chance of not running out, between 0 and 1")
  private BigDecimal chance;

  @Option(
      names = "--drop-signature",
      description = "accept signed workbooks; what is written has no signature any more")
  private boolean dropSignature;

  @Spec private CommandSpec spec;

  AnalyseCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (budget != null && budget.signum() < 0) {
      throw new ParameterException(spec.commandLine(), "--budget must not be negative: " + budget);
    }
    List<Path> found = Books.expand(over.books, spec);
    if (out != null && found.size() > 1) {
      throw new ParameterException(
          spec.commandLine(), "--out takes one workbook, not " + found.size() + ".");
    }
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            Optional.ofNullable(over.asOf),
            Optional.ofNullable(out),
            reports,
            Optional.ofNullable(budget),
            chance == null ? OptionalDouble.empty() : OptionalDouble.of(chanceWanted()),
            over.strict,
            backups.kept(),
            dropSignature,
            BuildVersion.number());
    return Books.report(
        console, over.quiet, found, (progress) -> Batch.analyse(found, options, progress));
  }

  private double chanceWanted() {
    double asked = chance.doubleValue();
    String typed = chance.toPlainString();
    if (asked >= 50 && asked <= 99.9) {
      console.complain("--chance " + typed + " is read as percent.");
      return asked; // the reader divides it, and leaves a finding
    }
    if (!(asked > 0 && asked < 1)) {
      throw new ParameterException(
          spec.commandLine(), "--chance must lie between 0 and 1, such as 0.95: " + typed);
    }
    return asked;
  }
}
