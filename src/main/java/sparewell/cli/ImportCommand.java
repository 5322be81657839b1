package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.ImportRun;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.importing.ImportSource;

/** Adds rows of CSV files to the angler's sheets. */
final class ImportCommand extends Command {
  private final PositionalParamSpec book =
      parameter("BOOK", Path.class, "1", "workbook (.xlsx, .xlsm) that gets the rows");
  private final Map<InputSheet, OptionSpec> files = new LinkedHashMap<>();
  private final OptionSpec dates;
  private final OptionSpec dryRun;
  private final OptionSpec backups;
  private final OptionSpec quiet;

  ImportCommand(Console console) {
    super(
        console,
        "import",
        "Add rows of CSV files to your own sheets, after a backup.",
        "A row that the sheet holds already is not added again.");
    file(InputSheets.TRIPS, "--trips", "rows for the sheet Trips");
    file(InputSheets.STYLE_HOURS, "--style-hours", "rows for Style hours");
    file(InputSheets.LOSSES, "--losses", "rows for Losses");
    file(InputSheets.RESTOCKS, "--restocks", "rows for Restocks");
    file(InputSheets.TRANSFERS, "--transfers", "rows for Transfers");
    file(InputSheets.BOX_LOG, "--box-log", "rows for Box log");
    file(InputSheets.COUNTS, "--counts", "rows for Counts");
    file(InputSheets.STOCK, "--stock", "rows for Stock");
    dates =
        option(
            "--dates",
            "ymd|dmy|mdy",
            DateOrder.class,
            "order of dates in figures (else as one date in the file proves)");
    dryRun = flag("--dry-run", "say what would be added; write nothing");
    backups = backups();
    quiet = quiet();
  }

  private void file(InputSheet sheet, String name, String description) {
    files.put(sheet, option(name, "F.csv", Path.class, description));
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
      throw wrong(
          "Say what to import: "
              + String.join(", ", files.values().stream().map(OptionSpec::longestName).toList())
              + ".");
    }
    return report(
        quiet.getValue(),
        () ->
            ImportRun.run(
                book.getValue(),
                sources,
                Optional.ofNullable(dates.getValue()),
                dryRun.getValue(),
                LocalDateTime.now(),
                kept(backups)));
  }
}
