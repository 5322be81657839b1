package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sparewell.run.ImportRun;
import sparewell.workbook.InputSheet;
import sparewell.workbook.importing.ImportSource;

/** Adds rows of CSV files to the angler's sheets. */
final class ImportCommand extends Command {
  ImportCommand(Console console) {
    super(console, "import");
  }

  /** Name of the option for the rows of a sheet. */
  private static String option(InputSheet sheet) {
    return "--" + sheet.name().toLowerCase(Locale.ROOT).replace(' ', '-');
  }

  @Override
  public Integer call() {
    List<ImportSource> sources = new ArrayList<>();
    for (InputSheet sheet : ImportSource.SHEETS) {
      Optional<Path> file = option(option(sheet));
      file.ifPresent(path -> sources.add(new ImportSource(sheet, path)));
    }
    if (sources.isEmpty()) {
      List<String> names = ImportSource.SHEETS.stream().map(ImportCommand::option).toList();
      throw wrong("Say what to import: " + String.join(", ", names) + ".");
    }
    return report(
        () ->
            ImportRun.run(
                value("BOOK"),
                sources,
                option("--dates"),
                value("--dry-run"),
                LocalDateTime.now(),
                backups()));
  }
}
