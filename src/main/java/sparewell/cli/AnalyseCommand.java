package sparewell.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import sparewell.run.Batch;
import sparewell.run.Experiences;
import sparewell.run.RunOptions;
import sparewell.workbook.InputRows;
import sparewell.workbook.Overrides;
import sparewell.workbook.Range;
import sparewell.workbook.TypedChance;

/** Reads workbooks, works everything out, writes the answers back. */
final class AnalyseCommand implements Callable<Integer> {
  private final Console console;
  private final CommandForm form =
      CommandForm.of(
          "analyse", this, "Read workbooks, write the recommendation sheets and the CSV files.");
  private final BookOptions over = new BookOptions(form);
  private final OptionSpec backups = form.backups();
  private final OptionSpec out =
      form.option("--out", "FILE", Path.class, "write to this workbook instead");
  private final OptionSpec reports = form.reports();
  private final OptionSpec budget =
      form.option("--budget", "N", BigDecimal.class, "money for the buy list");
  private final OptionSpec chance =
      form.option(
          "--chance", "P", BigDecimal.class, "wanted chance of not running out, between 0 and 1");
  private final OptionSpec experience =
      form.option(
          "--experience",
          "FILE.csv",
          Path.class,
          "what other logs say, as share makes it (found by itself as experience.csv beside BOOK)");
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
    Overrides overrides = new Overrides(over.asOf(), budget(), chance());
    List<Path> found = Books.expand(over.books(), form);
    Optional<Path> target = Optional.ofNullable(out.getValue());
    if (target.isPresent() && found.size() > 1) {
      throw form.wrong("--out takes one workbook, not " + found.size() + ".");
    }
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            target,
            reports.getValue(),
            overrides,
            over.strict(),
            form.kept(backups),
            dropSignature.getValue(),
            console.columns(),
            experiences(),
            BuildVersion.number());
    return Books.report(
        console, over.quiet(), found, (progress) -> Batch.analyse(found, options, progress));
  }

  private Experiences experiences() {
    Experiences experiences = new Experiences(Optional.ofNullable(experience.getValue()));
    experiences
        .fault()
        .ifPresent(
            fault -> {
              throw form.wrong("--experience: " + fault);
            });
    return experiences;
  }

  private Optional<BigDecimal> budget() {
    Optional<BigDecimal> asked = Optional.ofNullable(budget.getValue());
    Range allowed = InputRows.BUDGET.range().orElseThrow();
    if (asked.isPresent() && !allowed.holds(asked.get().doubleValue())) {
      throw form.wrong("--budget must be " + allowed.words() + ": " + asked.get().toPlainString());
    }
    return asked;
  }

  private Optional<TypedChance> chance() {
    Optional<BigDecimal> asked = Optional.ofNullable(chance.getValue());
    Optional<TypedChance> typed = asked.flatMap(given -> TypedChance.of(given.doubleValue()));
    if (asked.isPresent() && typed.isEmpty()) {
      throw form.wrong(
          "--chance must lie between 0 and 1, such as 0.95: " + asked.get().toPlainString());
    }
    if (typed.isPresent() && typed.get().isPercent()) {
      console.complain("--chance " + asked.get().toPlainString() + " is read as percent.");
    }
    return typed;
  }
}
