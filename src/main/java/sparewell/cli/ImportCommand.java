package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.ImportRun;
import sparewell.run.Outcome;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.importing.ImportSource;

/** Adds rows of CSV files to the angler's sheets. */
final class ImportCommand implements Callable<Integer> {
  private final Console console;
  private final CommandForm form =
      CommandForm.of(
          "import",
          this,
          "Add rows of CSV files to your own sheets, after a backup.",
          "A row that the sheet holds already is not added again.");
  private final PositionalParamSpec book =
      form.parameter("BOOK", Path.class, "1", "workbook (.xlsx, .xlsm) that gets the rows");
  private final Map<InputSheet, OptionSpec> files = new LinkedHashMap<>();
  private final OptionSpec dates;
  private final OptionSpec dryRun;
  private final OptionSpec backups;
  private final OptionSpec quiet;

  private ImportCommand(Console console) {
    this.console = console;
    file(InputSheets.TRIPS, "--trips", "rows for the sheet Trips");
    file(InputSheets.STYLE_HOURS, "--style-hours", "rows for Style hours");
    file(InputSheets.LOSSES, "--losses", "rows for Losses");
    file(InputSheets.RESTOCKS, "--restocks", "rows for Restocks");
    file(InputSheets.TRANSFERS, "--transfers", "rows for Transfers");
    file(InputSheets.BOX_LOG, "--box-log", "rows for Box log");
    file(InputSheets.COUNTS, "--counts", "rows for Counts");
    file(InputSheets.STOCK, "--stock", "rows for Stock");
    dates =
        form.option(
            "--dates",
            "ymd|dmy|mdy",
            DateOrder.class,
            "order of dates in figures (else as one date in the file proves)");
    dryRun = form.flag("--dry-run", "say what would be added; write nothing");
    backups = form.backups();
    quiet = form.flag("--quiet", "print nothing but problems");
  }

  private void file(InputSheet sheet, String name, String description) {
    files.put(sheet, form.option(name, "F.csv", Path.class, description));
  }

  static CommandSpec of(Console console) {
    return new ImportCommand(console).form.complete();
  }

  @Override
  public Integer call() {
    List<ImportSource> sources = new ArrayList<>();
    files.forEach(
        (sheet, option) -> {
          Path file = option.getValue();
          if (file != null) {
            sources.add(new ImportSource(sheet, file));
          }
        });
    if (sources.isEmpty()) {
      throw form.wrong(
          "Say what to import: "
              + String.join(", ", files.values().stream().map(OptionSpec::longestName).toList())
              + ".");
    }
    boolean silent = quiet.getValue();
    Outcome outcome;
    try (Watch watch = new Watch(console, 1, silent)) {
      outcome =
          ImportRun.run(
              book.getValue(),
              sources,
              Optional.ofNullable(dates.getValue()),
              dryRun.getValue(),
              LocalDateTime.now(),
              form.kept(backups));
      watch.report(1);
    }
    Books.report(console, silent, outcome);
    return outcome.exitCode();
  }
}
