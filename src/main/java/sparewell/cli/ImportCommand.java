package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sparewell.run.ImportRun;
import sparewell.run.Outcome;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.importing.ImportSource;

/** Adds rows of CSV files to the angler's sheets. */
@Command(
    name = "import",
    description = {
      "Add rows of CSV files to your own sheets, after a backup.",
      "A row that the sheet holds already is not added again."
    },
    mixinStandardHelpOptions = true,
    versionProvider = BuildVersion.class,
    sortOptions = false)
final class ImportCommand implements Callable<Integer> {
  private final Console console;

  @Parameters(paramLabel = "BOOK", description = "workbook (.xlsx, .xlsm) that gets the rows")
  private Path book;

  @Option(names = "--trips", paramLabel = "F.csv", description = "rows for the sheet Trips")
  private Path trips;

  @Option(names = "--style-hours", paramLabel = "F.csv", description = "rows for Style hours")
  private Path styleHours;

  @Option(names = "--losses", paramLabel = "F.csv", description = "rows for Losses")
  private Path losses;

  @Option(names = "--restocks", paramLabel = "F.csv", description = "rows for Restocks")
  private Path restocks;

  @Option(names = "--stock", paramLabel = "F.csv", description = "rows for Stock")
  private Path stock;

  @Option(names = "--dry-run", description = "say what would be added; write nothing")
  private boolean dryRun;

  @Mixin private BackupOption backups;

  @Option(names = "--quiet", description = "print nothing but problems")
  private boolean quiet;

  @Spec private CommandSpec spec;

  ImportCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    List<ImportSource> sources = new ArrayList<>();
    add(sources, InputSheets.TRIPS, trips);
    add(sources, InputSheets.STYLE_HOURS, styleHours);
    add(sources, InputSheets.LOSSES, losses);
    add(sources, InputSheets.RESTOCKS, restocks);
    add(sources, InputSheets.STOCK, stock);
    if (sources.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "Say what to import: --trips, --style-hours, --losses, --restocks or --stock.");
    }
    Outcome outcome;
    try (Watch watch = new Watch(console, 1, quiet)) {
      outcome = ImportRun.run(book, sources, dryRun, LocalDateTime.now(), backups.kept());
      watch.report(1);
    }
    Books.report(console, quiet, outcome);
    return outcome.exitCode();
  }

  private static void add(List<ImportSource> sources, InputSheet sheet, Path file) {
    if (file != null) {
      sources.add(new ImportSource(sheet, file));
    }
  }
}
