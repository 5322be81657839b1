package sparewell.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.OptionSpec;
import sparewell.run.Batch;
import sparewell.run.Experiences;
import sparewell.run.RunOptions;
import sparewell.workbook.InputSheets;
import sparewell.workbook.Overrides;
import sparewell.workbook.Range;
import sparewell.workbook.TypedChance;

/** Reads workbooks, works everything out, writes the answers back. */
final class AnalyseCommand extends Command {
  private final BookOptions over = new BookOptions(this);
  private final OptionSpec backups = backups();
  private final OptionSpec out =
      option("--out", "FILE", Path.class, "write to this workbook instead");
  private final OptionSpec reports = reports();
  private final OptionSpec budget =
      option("--budget", "N", BigDecimal.class, "money for the buy list");
  private final OptionSpec chance =
      option(
          "--chance", "P", BigDecimal.class, "wanted chance of not running out, between 0 and 1");
  private final OptionSpec experience =
      option(
          "--experience",
          "FILE.csv",
          Path.class,
          "what other logs say, as share makes it (found by itself as experience.csv beside BOOK)");
  private final OptionSpec dropSignature =
      flag(
          "--drop-signature", "accept signed workbooks; what is written has no signature any more");

  AnalyseCommand(Console console) {
    super(console, "analyse", "Read workbooks, write the recommendation sheets and the CSV files.");
  }

  @Override
  public Integer call() {
    Overrides overrides = new Overrides(over.asOf(), budget(), chance());
    List<Path> found = Books.expand(over.books(), this);
    Optional<Path> target = Optional.ofNullable(out.getValue());
    if (target.isPresent() && found.size() > 1) {
      throw wrong("--out takes one workbook, not " + found.size() + ".");
    }
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            target,
            reports.getValue(),
            overrides,
            over.strict(),
            kept(backups),
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
              throw wrong("--experience: " + fault);
            });
    return experiences;
  }

  private Optional<BigDecimal> budget() {
    Optional<BigDecimal> asked = Optional.ofNullable(budget.getValue());
    Range allowed = InputSheets.SETTING_ROWS.column("Budget").range().orElseThrow();
    if (asked.isPresent() && !allowed.holds(asked.get().doubleValue())) {
      throw wrong("--budget must be " + allowed.words() + ": " + asked.get().toPlainString());
    }
    return asked;
  }

  private Optional<TypedChance> chance() {
    Optional<BigDecimal> asked = Optional.ofNullable(chance.getValue());
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
}
