package sparewell.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import sparewell.run.Batch;
import sparewell.run.Experiences;
import sparewell.run.RunOptions;
import sparewell.workbook.InputSheets;
import sparewell.workbook.Overrides;
import sparewell.workbook.Range;
import sparewell.workbook.TypedChance;

/** Reads workbooks, works everything out, writes the answers back. */
final class AnalyseCommand extends Command {
  AnalyseCommand(Console console) {
    super(console, "analyse");
  }

  @Override
  public Integer call() {
    Overrides overrides = new Overrides(asOf(), budget(), chance());
    List<Path> found = Books.expand(value("BOOK"), this);
    Optional<Path> target = option("--out");
    if (target.isPresent() && found.size() > 1) {
      throw wrong("--out takes one workbook, not " + found.size() + ".");
    }
    RunOptions options =
        new RunOptions(
            LocalDateTime.now(),
            target,
            value("--reports"),
            overrides,
            value("--strict"),
            backups(),
            value("--drop-signature"),
            console.columns(),
            experiences(),
            BuildVersion.number());
    return Books.report(
        console, value("--quiet"), found, progress -> Batch.analyse(found, options, progress));
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
}
