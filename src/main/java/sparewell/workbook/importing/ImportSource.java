package sparewell.workbook.importing;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;

/**
 * Rows for an input sheet: a file, or rows made by this program.
 *
 * @param sheet one of {@link #SHEETS}
 * @param file the file as given, or a name for the rows
 * @param made rows by column in place of a file; each is new, whatever the sheet holds
 */
public record ImportSource(InputSheet sheet, Path file, Optional<List<Map<String, String>>> made) {
  /** The sheets that take rows, in the order in which their files are read. */
  public static final List<InputSheet> SHEETS =
      List.of(
          InputSheets.STOCK,
          InputSheets.TRIPS,
          InputSheets.STYLE_HOURS,
          InputSheets.LOSSES,
          InputSheets.RESTOCKS,
          InputSheets.TRANSFERS,
          InputSheets.BOX_LOG,
          InputSheets.COUNTS);

  public ImportSource {
    made = made.map(List::copyOf);
    if (!SHEETS.contains(sheet)) {
      throw new IllegalArgumentException("no rows are imported into " + sheet.name());
    }
  }

  public ImportSource(InputSheet sheet, Path file) {
    this(sheet, file, Optional.empty());
  }
}
